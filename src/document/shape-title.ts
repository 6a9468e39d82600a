/** The title of a shape as it is held: where its angles were changed, arms are said as they are and not as the ready shape has them. Degrees. */
import type { ShapeData } from '../../sim/index.ts';

type Angles = Readonly<Record<string, number | undefined>>;
type Side = 'L' | 'R';

/** From such a bend on an arm is wrapped, or on the legs: its shape says where, and its raise does not (our judgement, as the bounds below). */
const BENT = 60;
/** Raise up to which an arm is where: hanging 0, overhead 180. */
const RAISE = { atSide: 20, low: 60, out: 125, up: 160 } as const;
/** Plane from which a raised arm is before the body and not beside it: 0 at the side, 90 in front. */
const FORWARD = 60;
const BETWEEN = 35;

const PLACES = {
  atSide: ['at the sides', 'at the side'],
  low: ['low', 'low'],
  out: ['out to the sides', 'out to the side'],
  between: ['forward and out', 'forward and out'],
  forward: ['forward', 'forward'],
  up: ['up and out', 'up and out'],
  upForward: ['up and forward', 'up and forward'],
  overhead: ['overhead', 'overhead'],
} as const;

function placeOf(angles: Angles, side: Side): keyof typeof PLACES | undefined {
  const of = (name: string): number => angles[`${name}${side}`] ?? angles[name] ?? 0;
  if (of('elbowFlexion') > BENT) return undefined;
  const [raise, plane] = [of('shoulderElevation'), of('shoulderPlane')];
  if (raise < RAISE.atSide) return 'atSide';
  if (raise < RAISE.low) return 'low';
  if (raise < RAISE.out) return plane > FORWARD ? 'forward' : plane > BETWEEN ? 'between' : 'out';
  if (raise < RAISE.up) return plane > BETWEEN ? 'upForward' : 'up';
  return 'overhead';
}

/** Undefined where an arm is bent. */
function wordArms(angles: Angles): string | undefined {
  const [left, right] = [placeOf(angles, 'L'), placeOf(angles, 'R')];
  if (!left || !right) return undefined;
  if (left === right) return `arms ${PLACES[left][0]}`;
  return `left arm ${PLACES[left][1]}, right arm ${PLACES[right][1]}`;
}

const OF_ARM = /^(shoulder|elbow)/;

export function titleOf(data: Pick<ShapeData, 'title' | 'angles'>, adjusted: Angles): string {
  if (!Object.keys(adjusted).some((name) => OF_ARM.test(name))) return data.title;
  const sided = Object.fromEntries(
    Object.entries(data.angles).filter(([name]) => adjusted[name.replace(/[LR]$/, '')] === undefined),
  );
  const arms = wordArms({ ...sided, ...adjusted });
  const parts = data.title.split(', ');
  if (!arms || !parts.some((part) => /\b(arms?|hands?)\b/i.test(part))) return data.title;
  const said = [...parts.filter((part) => !/\b(arms?|hands?)\b/i.test(part)), arms].join(', ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
}
