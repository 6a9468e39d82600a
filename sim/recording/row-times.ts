/** Times of rows: even or not, and how many in a second. */

import { FieldError } from '../math/field-error.ts';
import { checkRate, LEAST_ROWS } from './recording-limits.ts';
import type { ReadSteps } from './steps.ts';

export interface RowTimes {
  readonly times: Float64Array;
  readonly rateHz: number;
}

/** Judgement: a stamp off an even row of times by less than this share of a step says nothing. */
const EVEN_SHARE = 0.002;
/** ReadSteps that a median is taken of: a million are not sorted at once. */
const MEDIAN_OF = 10_000;

export function evenTimes(file: string, rows: number, rateHz: number): RowTimes {
  checkCount(file, rows);
  const times = new Float64Array(rows);
  for (let i = 0; i < rows; i++) times[i] = i / rateHz;
  return { times, rateHz };
}

function checkCount(file: string, rows: number): void {
  if (rows < LEAST_ROWS) throw new FieldError(file, `${rows} rows of values`, `at least ${LEAST_ROWS} rows`);
}

/** Of ascending stamps. Stamps that are even but for their last written digit become even; others are said in the notes. */
export function* stampedTimes(
  file: string,
  stamps: Float64Array,
  notes: string[],
  statedHz?: number,
): ReadSteps<RowTimes> {
  const n = stamps.length;
  checkCount(file, n);
  const mean = (stamps[n - 1] - stamps[0]) / (n - 1);
  const unit = lastDigit(stamps);
  yield { done: 0.2 };
  // a row that is left out puts others off by a third of a step at least: coarser digits could hide it
  const slack = Math.max(EVEN_SHARE * mean, unit < 0.3 * mean ? 1.01 * unit : 0);
  const known = Math.max(1e-3, slack / (mean * (n - 1)));
  if (statedHz !== undefined && Math.abs(mean * statedHz - 1) < known && worstOff(stamps, 1 / statedHz) <= slack)
    return { times: gridOf(stamps, 1 / statedHz), rateHz: statedHz };
  const isStatedWrong = statedHz !== undefined && Math.abs(mean * statedHz - 1) > Math.max(0.01, known);
  yield { done: 0.5 };
  const off = worstOff(stamps, mean);
  if (off <= slack) {
    const rateHz = checkRate(`${file} times`, 1 / mean);
    if (isStatedWrong) notes.push(wordStated(statedHz, rateHz));
    return { times: gridOf(stamps, mean), rateHz };
  }
  yield { done: 0.8 };
  const middle = medianStep(stamps);
  const rateHz = checkRate(`${file} times`, 1 / middle);
  // lost rows lengthen the mean, not the usual step
  if (statedHz !== undefined && Math.abs(statedHz / rateHz - 1) > 0.01) notes.push(wordStated(statedHz, rateHz));
  const longest = longestStep(stamps);
  notes.push(
    `The times are not even: most are ${round(middle)} s apart, the longest step is ${round(longest.step)} s, after ${round(longest.at)} s.`,
  );
  return { times: stamps, rateHz };
}

const wordStated = (stated: number, found: number): string =>
  `The file states ${round(stated)} values in a second; by its times they are ${round(found)}. The times are used.`;

const round = (x: number): string => String(Number(x.toPrecision(6)));

function gridOf(stamps: Float64Array, step: number): Float64Array {
  const times = new Float64Array(stamps.length);
  for (let i = 0; i < times.length; i++) times[i] = stamps[0] + i * step;
  return times;
}

function worstOff(stamps: Float64Array, step: number): number {
  let worst = 0;
  for (let i = 0; i < stamps.length; i++) worst = Math.max(worst, Math.abs(stamps[i] - stamps[0] - i * step));
  return worst;
}

/** 10^-k for the fewest decimals k that all stamps have; 0 beyond 6. */
function lastDigit(stamps: Float64Array): number {
  let scale = 1;
  for (const t of stamps)
    for (let x = t * scale; Math.abs(x - Math.round(x)) > 1e-6 + 1e-13 * Math.abs(x); x = t * scale) {
      scale *= 10;
      if (scale > 1e6) return 0;
    }
  return 1 / scale;
}

function medianStep(stamps: Float64Array): number {
  const steps = stamps.length - 1;
  const every = Math.ceil(steps / MEDIAN_OF);
  const some = new Float64Array(Math.ceil(steps / every));
  for (let k = 0; k < some.length; k++) some[k] = stamps[k * every + 1] - stamps[k * every];
  return some.sort()[some.length >> 1];
}

function longestStep(stamps: Float64Array): { step: number; at: number } {
  let found = { step: 0, at: stamps[0] };
  for (let i = 1; i < stamps.length; i++)
    if (stamps[i] - stamps[i - 1] > found.step) found = { step: stamps[i] - stamps[i - 1], at: stamps[i - 1] };
  return found;
}
