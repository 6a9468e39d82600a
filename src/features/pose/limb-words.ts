/** What a hand on a limb does, in a few words and numbers: what the plate beside the hand shows and what a reader hears. */
import { REV } from '../../../sim/math/angles.ts';
import { calcGains } from '../../app/drag-plate.tsx';
import type { Page } from '../../app/page.ts';
import { calcPlace, readAt } from '../../app/plot/readout.ts';
import { texts } from '../../app/words.ts';
import type { FlightResult, Outline } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { sayNumber, unitOf } from '../../ui/units.ts';
import type { Work } from './limb-work.ts';
import { poseTexts, wordLimb } from './words.ts';

interface PlateLine {
  readonly hue: 'twist' | 'som' | 'ink';
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly unit?: string;
}

export interface PlateText {
  readonly part: string;
  readonly result: readonly PlateLine[];
  readonly rate?: PlateLine;
  /** where the limb is, or that its range ends here */
  readonly raised: string;
  readonly end?: string;
}

/** Turns fewer than this are none: the somersault's rate is what a limb changes. */
const NO_TWIST = 0.05;

/** rev/s at t, in the direction that the flight turns as a whole. */
function rateAt({ frames: f }: FlightResult, t: number, isTwist: boolean): number {
  const [rate, angle] = isTwist ? [f.twistRate, f.twist] : [f.somersaultRate, f.somersault];
  return (readAt(rate, calcPlace(f, t)) / REV) * (angle[f.n - 1] < angle[0] ? -1 : 1);
}

export function wordPlate({ services }: Page, work: Work, now: FlightResult): PlateText {
  const { mark, limb, both, t } = work;
  const part = wordLimb(limb, both);
  const isTwist = Math.abs(mark.outline.twists ?? 0) > NO_TWIST || Math.abs(now.outline.twists ?? 0) > NO_TWIST;
  const [a, b] = [mark, now].map((result) => sayNumber('rate', rateAt(result, t, isTwist), 2));
  const deg = (angles: readonly number[]): string =>
    formatNumber(services.posing.raisedDeg(mark.flight.body, angles, limb), 0);
  const to = deg(services.posing.anglesAt(now, t));
  const [stopped] = work.stopped;
  return {
    part: stopped ? poseTexts.atDeg(part, to) : part,
    result: calcGains(mark.outline, now.outline).filter(({ hue }) => hue === (isTwist ? 'twist' : 'som')),
    ...(a === b
      ? {}
      : { rate: { hue: isTwist ? 'twist' : 'som', name: poseTexts.rate, from: a, to: b, unit: unitOf('rate') } }),
    raised: poseTexts.raised(limb, deg(work.before), to),
    ...(stopped ? { end: poseTexts.endOf(stopped) } : {}),
  };
}

/** "twist 1.00", or the somersaults of a flight without. */
export function turnsOf(o: Outline): string {
  const isTwist = (o.twists ?? 0) > NO_TWIST;
  const turns = isTwist ? o.twists : o.somersaults;
  if (turns === null) return '';
  return `${isTwist ? texts.plots.twist : texts.plots.somersault} ${sayNumber('turns', turns, 2)}`;
}
