/** The command line: thin over sim/index.ts. Results on stdout; what is wrong, in one line, on stderr. */
import pkg from '../../package.json' with { type: 'json' };
import { runBody } from './body.ts';
import { oneLine, wordBadInput, wordSystemFault } from './command-error.ts';
import { type Command, parseCommand } from './command-line.ts';
import { runFly } from './fly.ts';
import { formatHelp } from './help.ts';
import { runMap } from './map.ts';
import { runMargin } from './margin.ts';
import { runSheet } from './sheet.ts';
import { runSolve } from './solve.ts';
import { serveIfThread } from './worker.ts';

export interface Streams {
  out(text: string): void;
  err(text: string): void;
}

const processStreams: Streams = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
};

/** Returns the exit code: 0, 2 for bad input, 1 for a fault of Shapeflight's own. */
export async function main(argv: readonly string[], streams: Streams = processStreams): Promise<number> {
  if (streams === processStreams) endQuietlyWithPipe();
  try {
    streams.out(await run(parseCommand(argv)));
    return 0;
  } catch (error) {
    const told = wordBadInput(error);
    if (told !== undefined) {
      streams.err(`shapeflight: ${told}\n`);
      return 2;
    }
    streams.err(
      `shapeflight: a fault of the program: ${oneLine(error instanceof Error ? (error.stack ?? error.message) : String(error))}\n`,
    );
    return 1;
  }
}

async function run(command: Command): Promise<string> {
  switch (command.kind) {
    case 'help':
      return formatHelp();
    case 'version':
      return `${pkg.version}\n`;
    case 'fly':
      return runFly(command);
    case 'body':
      return runBody(command);
    case 'sheet':
      return runSheet(command);
    case 'margin':
      return runMargin(command);
    case 'map':
      return runMap(command);
    case 'solve':
      return runSolve(command);
  }
}

// the same bundle is the entry of the threads of --jobs
serveIfThread();

/** Who reads stdout may stop early, as "head" does; anything else that stdout cannot take is said. */
function endQuietlyWithPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    process.stderr.write(`shapeflight: the standard output: ${oneLine(wordSystemFault(error))}\n`);
    process.exit(2);
  });
}
