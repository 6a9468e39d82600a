/** The command line: thin over sim/index.ts. Results on stdout; what is wrong, in one line, on stderr. */
import { VERSION } from '../../sim/index.ts';
import { runBody } from './body.ts';
import { runCamera } from './camera.ts';
import { runClass } from './class.ts';
import { isOfFlight, NothingFlownError, oneLine, printable, wordBadInput, wordSystemFault } from './command-error.ts';
import { type CommandCall, parseCommand } from './command-line.ts';
import { runDraft } from './draft.ts';
import { runExport } from './export.ts';
import { runFit } from './fit.ts';
import { runFix } from './fix.ts';
import { runFly } from './fly.ts';
import { formatCommandHelp, formatHelp } from './help.ts';
import { type CommandOutput, INTERRUPTED } from './interrupt.ts';
import { runLink } from './link.ts';
import { runMap } from './map.ts';
import { runMargin } from './margin.ts';
import { runPicture } from './picture.ts';
import { runSheet } from './sheet.ts';
import { runSolve } from './solve.ts';
import { runTimes } from './times.ts';

interface Streams {
  out(text: string): void;
  err(text: string): void;
}

const processStreams: Streams = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
};

/** A search that could fly nothing. */
const NOTHING_FLOWN = 3;

/** Returns the exit code: 0, 2 for bad input, 3 for a search that could fly nothing, 1 for a fault of Shapeflight's own, 130 when it was interrupted. */
export async function main(argv: readonly string[], streams: Streams = processStreams): Promise<number> {
  if (streams === processStreams) endQuietlyWithPipe();
  let skill = '';
  try {
    const command = parseCommand(argv);
    if ('skill' in command) skill = command.skill ?? '';
    const done = await run(command, argv.slice(1));
    const { out, interrupted } = typeof done === 'string' ? { out: done, interrupted: undefined } : done;
    streams.out(printable(out));
    if (interrupted === undefined) return 0;
    streams.err(`shapeflight: ${interrupted}\n`);
    return INTERRUPTED;
  } catch (error) {
    const message = wordBadInput(error);
    if (message !== undefined) {
      const about = skill !== '' && isOfFlight(error) ? `${oneLine(skill)}: ` : '';
      streams.err(`shapeflight: ${about}${message}\n`);
      return error instanceof NothingFlownError ? NOTHING_FLOWN : 2;
    }
    streams.err(
      `shapeflight: a fault of the program: ${oneLine(error instanceof Error ? (error.stack ?? error.message) : String(error))}\n`,
    );
    return 1;
  }
}

async function run(command: CommandCall, args: readonly string[]): Promise<string | CommandOutput> {
  switch (command.kind) {
    case 'help':
      return command.of ? formatCommandHelp(command.of) : formatHelp();
    case 'version':
      return `${VERSION}\n`;
    case 'fly':
      return runFly(command, args);
    case 'body':
      return runBody(command, args);
    case 'export':
      return runExport(command);
    case 'link':
      return runLink(command);
    case 'draft':
      return runDraft(command);
    case 'fix':
      return runFix(command);
    case 'sheet':
      return runSheet(command, args);
    case 'fit':
      return runFit(command, args);
    case 'camera':
      return runCamera(command, args);
    case 'times':
      return runTimes(command);
    case 'class':
      return runClass(command);
    case 'picture':
      return runPicture(command, args);
    case 'margin':
      return runMargin(command, args);
    case 'map':
      return runMap(command, args);
    case 'solve':
      return runSolve(command, args);
  }
}

/** Who reads stdout may stop early, as "head" does; anything else that stdout cannot take is said. */
function endQuietlyWithPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    process.stderr.write(`shapeflight: the standard output: ${oneLine(wordSystemFault(error))}\n`);
    process.exit(2);
  });
}
