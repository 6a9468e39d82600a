/** What the hips' reflex makes of a skill that is to be held straight: a range of delays beside the open loop. */
import {
  buildSkill,
  contactFor,
  distances,
  flySkill,
  joinTables,
  launchChained,
  makeReflexRange,
  needsReflexRange,
  openStudy,
  REFLEX_DELAYS,
  REFLEX_TRIES,
  type ReflexRange,
  type ReflexShare,
  rangeBalance,
  type SampleTable,
  type StudyRequest,
  shareOf,
} from '../../sim/index.ts';
import { cutSpans, runPieces } from './jobs.ts';

/** `table` is of the open loop, from sample 0 on; undefined where the skill needs no range, or it was interrupted. */
export async function runReflexRange(
  request: StudyRequest,
  table: SampleTable,
  jobs: number,
): Promise<ReflexRange | undefined> {
  if (table.from !== 0 || table.n === 0) return undefined;
  const contact = await contactFor(request.spec);
  const flight = flySkill(launchChained(buildSkill(request.spec), contact));
  if (!needsReflexRange(flight, request)) return undefined;
  const { window } = openStudy(request, contact);
  const n = Math.min(REFLEX_TRIES, table.n);
  const reflex: ReflexShare[] = [];
  for (const delay of REFLEX_DELAYS) {
    const balanced = { ...request, balance: rangeBalance(delay, request.seed) };
    const { results, isInterrupted } = await runPieces('study', balanced, cutSpans(0, n, jobs), jobs);
    if (isInterrupted) return undefined;
    const flown = joinTables(results.flatMap((r) => (r.kind === 'samples' ? [r.table] : [])));
    reflex.push({ delay, share: shareOf(distances(window, flown), n) });
  }
  return makeReflexRange(shareOf(distances(window, table).subarray(0, n), n), reflex);
}

const percent = (x: number): string => `${(100 * x).toFixed(0)} %`;

export function formatReflexRange({ openLoop, reflex, note }: ReflexRange): string {
  const row = (name: string, { share, interval }: ReflexRange['openLoop']): string =>
    `  ${name.padEnd(26)} ${percent(share).padStart(5)} (${percent(interval[0])} to ${percent(interval[1])})`;
  return [
    `To be held straight: in the window, of the first ${openLoop.n} samples`,
    row('open loop', openLoop),
    ...reflex.map(({ delay, share }) => row(`hips' reflex after ${delay.toFixed(2)} s`, share)),
    `  ${note}`,
  ].join('\n');
}
