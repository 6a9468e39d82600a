/** The command "fix": what would land a skill, as cues, and the skill with one of them. */
import { shapes } from '../../presets/index.ts';
import {
  apparatusOf,
  causeOfFix,
  contactFor,
  fixLandingSteps,
  flySkill,
  formatSkill,
  joinCauses,
  judgeFlight,
  launchChained,
  needsFix,
  PLAIN_NUMBERS,
  wordCause,
  wordLeft,
  wordVerdict,
} from '../../sim/index.ts';
import { CLOSING } from './closing.ts';
import { CommandError, NothingFlownError } from './command-error.ts';
import type { CommandOutput } from './interrupt.ts';
import { makeProgressLine } from './progress-line.ts';
import { readSkill } from './read-input.ts';
import { runSteps } from './run-steps.ts';
import { checkApart, writeFiles } from './write-files.ts';

const NOTHING =
  'no one change lands it, and no two: times by up to 0.15 s, angles by 25 deg, the push by 0.5 m/s, the rotation by 10 % were tried (solve looks wider)';

const ASKS_MORE = 'it asks a joint or the take-off for more than is known, which the flight before did not';

interface FixCommand {
  readonly skill: string;
  readonly way: number;
  readonly out?: string;
}

export async function runFix({ skill: given, way, out: file }: FixCommand): Promise<string | CommandOutput> {
  const { spec, skill, inputs, file: source, update } = await readSkill(given);
  const wanted = file === undefined ? [] : [{ option: '--out', file }];
  checkApart(wanted, inputs);
  if (!spec.target) throw new CommandError(`${given}: states no target, so nothing says what it should land as`);
  const contact = await contactFor(spec);
  const launched = launchChained(skill, contact);
  const flight = flySkill(launched);
  const now = judgeFlight(launched, flight, contact);
  const head = `now: ${wordVerdict(now)}`;
  if (!needsFix(launched, now)) return `${head}\nlands already; nothing is written\n${CLOSING}\n`;
  const { result, isInterrupted } = await runSteps(
    fixLandingSteps(spec, contact),
    ({ changes, of }) => [changes, of],
    makeProgressLine('fix'),
  );
  const { fixes, closest } = result;
  const wordOf = (id: string): string => source.shapes?.[id]?.word ?? shapes[id]?.word ?? id;
  const { pieces, leaves } = apparatusOf({ skill: launched, flight });
  const left = wordLeft(leaves === undefined ? undefined : pieces[leaves].kind);
  const ways = (list: typeof fixes): string[] =>
    list.map(({ steps, airTime, verdict, asksMore }) => {
      const cues = steps.map((step) => wordCause(causeOfFix(step, airTime, wordOf, left), 'cue', PLAIN_NUMBERS));
      return `${joinCauses(cues)}\n   then: ${wordVerdict(verdict)}${asksMore ? `\n   ${ASKS_MORE}` : ''}`;
    });
  if (fixes.length === 0 && isInterrupted) return { out: '', interrupted: 'interrupted: nothing found so far' };
  const nearest = closest && ways([closest])[0];
  if (fixes.length === 0) throw new NothingFlownError(nearest ? `${NOTHING}\nnearest: ${nearest}` : NOTHING);
  const chosen = fixes[way - 1];
  if (!chosen) throw new CommandError(`--way: "${way}" is not possible; allowed: 1 to ${fixes.length}`);
  writeFiles(wanted.map((output) => ({ ...output, pieces: [formatSkill(update(chosen.spec))] })));
  const lines = ways(fixes).map((line, i) => `${i + 1}  ${line}`);
  const out = `${[head, ...lines].join('\n')}\n${CLOSING}\n`;
  return isInterrupted ? { out, interrupted: 'interrupted: what was found so far is kept' } : out;
}
