/** In how many of ten of the stated ranges a landing ends which way; never a chance. Texts in one place, ready for translation. */
import type { EndingKind } from '../contact/ending.ts';
import type { Likelihood } from '../skill/likelihood.ts';

/** After "in N of 10": as short as the ending can be named. */
const SHORT: Readonly<Record<EndingKind, string>> = {
  stands: 'stands',
  hop: 'hop',
  smallStep: 'small step',
  steps: 'steps',
  deepSquat: 'deep squat',
  hands: 'hands down',
  knees: 'on the knees',
  seat: 'sits down',
  back: 'on the back',
  head: 'head to the mat',
  unsettled: 'neither stands nor is down',
  tooFast: 'not computed',
};

/** "stands in 7 of 10 of the stated ranges; small step in 2, steps in 1": the ending that is said first, however seldom it comes. */
export function wordLikelihood(tenths: Likelihood['tenths'], said: EndingKind): string {
  const own = { kind: said, tenths: tenths.find((one) => one.kind === said)?.tenths ?? 0 };
  const [first, ...rest] = [own, ...tenths.filter((one) => one.kind !== said && one.tenths > 0)];
  const others = rest.map((one) => `${SHORT[one.kind]} in ${one.tenths}`);
  const head = `${SHORT[first.kind]} in ${first.tenths} of 10 of the stated ranges`;
  if (others.length === 0) return head;
  return `${head}; ${rest[0].tenths > first.tenths ? 'more often ' : ''}${others.join(', ')}`;
}
