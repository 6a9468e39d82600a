/**
 * What the trade calls a dismount off a rail: "double straight", "double straight with two twists". Counted as it is taught, from the swing on: a double is one of which about 1.7
 * somersaults are left after the release. From what the skill is meant to be, and the shape that is flown. Common practice, no source.
 */
import type { Frames } from '../measure/frames.ts';
import type { Summary } from '../measure/summary.ts';
import { codeColumns, shapeOf } from './code-of-flight.ts';

const COUNTS = ['', '', 'double ', 'triple ', 'quadruple '];
/** By half twists. */
const TWISTS: Readonly<Record<number, string>> = {
  1: 'a half twist',
  2: 'a full twist',
  3: 'one and a half twists',
  4: 'two twists',
  5: 'two and a half twists',
  6: 'three twists',
};

/** Undefined where nothing is counted so. */
export function wordOffRail({ body, target }: Pick<Summary, 'body' | 'target'>, frames: Frames): string | undefined {
  if (!target || !Number.isInteger(target.somersaults) || target.somersaults < 1 || target.somersaults > 4)
    return undefined;
  const shape = shapeOf(codeColumns(body, frames));
  const halves = Math.round(2 * target.twists);
  if (!shape || (halves > 0 && !TWISTS[halves])) return undefined;
  return `${COUNTS[target.somersaults]}${shape}${halves > 0 ? ` with ${TWISTS[halves]}` : ''}`;
}

/** A verdict with it, of a skill that left a rail; others have none. */
export function namedOffRail<V extends { readonly flown: object }>(
  verdict: V,
  isOffRail: boolean,
  summary: Pick<Summary, 'body' | 'target'>,
  frames: Frames,
): V {
  const trade = isOffRail ? wordOffRail(summary, frames) : undefined;
  return trade ? { ...verdict, flown: { ...verdict.flown, trade } } : verdict;
}
