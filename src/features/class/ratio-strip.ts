/** Ratios of a class along a log axis from a quarter to four times: a mark a student, stacked where they agree. */

/** Steps from the middle to either end; one is a factor of 1.09. */
export const STEPS = 16;
const END = Math.log(4);

interface RatioStrip {
  /** `step`: from the middle, -STEPS to STEPS */
  readonly stacks: readonly { readonly step: number; readonly count: number }[];
  readonly highest: number;
  /** beyond the ends; what is zero or has the other sign is below */
  readonly below: number;
  readonly above: number;
}

export function calcStrip(ratios: readonly number[]): RatioStrip {
  const counts = new Map<number, number>();
  let [below, above] = [0, 0];
  for (const ratio of ratios) {
    const share = ratio > 0 ? Math.log(ratio) / END : Number.NEGATIVE_INFINITY;
    const step = Math.round(share * STEPS);
    if (step < -STEPS) below++;
    else if (step > STEPS) above++;
    else counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  const stacks = [...counts].map(([step, count]) => ({ step, count })).sort((a, b) => a.step - b.step);
  return { stacks, highest: Math.max(0, ...counts.values()), below, above };
}
