/**
 * The code of a flight from its columns (docs/notation.md says the rule). Digit n = round(2 x |twist done| at 360 n deg of
 * somersault done, halves up) minus the digits before; the last takes the rest. Where there is no code, the reason.
 */

import type { Body } from '../body/body.ts';
import { REV } from '../math/angles.ts';
import type { Frames } from '../measure/frames.ts';
import { type CodeShape, countDigits, MOST_QUARTERS, type TrampolineCode } from './trampoline-code.ts';

/** What a code is read from, one value a frame; angles in rad, counted as in Frames. */
export interface CodeColumns {
  readonly t: ArrayLike<number>;
  readonly somersault: ArrayLike<number>;
  readonly twist: ArrayLike<number>;
  /** how far the thighs are bent up to the upper body, and the shanks to the thighs; mean of both sides */
  readonly hipBend?: ArrayLike<number>;
  readonly kneeBend?: ArrayLike<number>;
  readonly undefinedFrom?: number;
}

export type FlightCode =
  | { readonly kind: 'code'; readonly code: TrampolineCode; readonly earlyHalfTwists: number }
  | { readonly kind: 'none'; readonly reason: string };

/** 180 - 135 deg: pike and tuck have 135 deg or less between upper body and thighs, tuck also between thighs and shanks. */
const BENT = Math.PI / 4;
/** Judgement: the shape is read between these shares of the flight's time, so that take-off and landing do not count... */
const SHAPE_SPAN = [0.1, 0.8];
/** ...and a bend is a shape when it is there for at least this share of that time. */
const SHAPE_SHARE = 0.2;

/** The trampoline code of what was flown, from its counted columns (rad); or none, with the reason. */
export function codeOfFlight(columns: CodeColumns): FlightCode {
  const none = (reason: string): FlightCode => ({ kind: 'none', reason });
  const { somersault, twist } = columns;
  const last = somersault.length - 1;
  if (columns.undefinedFrom !== undefined)
    return none(`somersault and twist are not defined after ${columns.undefinedFrom.toFixed(2)} s`);
  if (last < 0 || !Number.isFinite(somersault[last]) || !Number.isFinite(twist[last]))
    return none('the flight has no somersault and twist to count');
  const done = somersault[last] - somersault[0];
  const quarters = halfUp((4 * Math.abs(done)) / REV);
  if (quarters > MOST_QUARTERS) return none(`${quarters} quarter somersaults; the notation ends at ${MOST_QUARTERS}`);
  const shape = shapeOf(columns);
  if (!shape) return none('this body has no hips and knees to read a shape from');

  const n = countDigits(quarters);
  const digits: number[] = [];
  let before = 0;
  for (let i = 1; i <= n; i++) {
    const at = i === n ? twist[last] : twistAt(columns, i * REV * (done < 0 ? -1 : 1));
    const total = halfUp((2 * Math.abs(at - twist[0])) / REV);
    const digit = total - before;
    if (digit < 0) return none(`the twist goes back in somersault ${i}: ${digit} half twists`);
    if (digit > 9) return none(`${digit} half twists in somersault ${i}; one digit ends at 9`);
    digits.push(digit);
    before = total;
  }
  const early = quarters === 0 ? twist[last] : twistAt(columns, (REV / 4) * (done < 0 ? -1 : 1));
  const earlyHalfTwists = halfUp((2 * Math.abs(early - twist[0])) / REV);
  return { kind: 'code', code: { quarters, halfTwists: digits, shape }, earlyHalfTwists };
}

const halfUp = (x: number): number => Math.floor(x + 0.5);

/** Twist when the somersault done first reaches `turn` (signed), between the frames by a straight line. */
function twistAt({ somersault, twist }: CodeColumns, turn: number): number {
  const sign = turn < 0 ? -1 : 1;
  const ahead = (i: number): number => sign * (somersault[i] - somersault[0] - turn);
  for (let i = 1; i < somersault.length; i++) {
    if (ahead(i) < 0) continue;
    const share = ahead(i - 1) / (ahead(i - 1) - ahead(i));
    return twist[i - 1] + share * (twist[i] - twist[i - 1]);
  }
  return twist[twist.length - 1];
}

export function shapeOf({ t, hipBend, kneeBend }: CodeColumns): CodeShape | undefined {
  if (!hipBend || !kneeBend) return undefined;
  const T = t[t.length - 1];
  let [all, bent, tucked] = [0, 0, 0];
  for (let i = 0; i < t.length; i++) {
    if (t[i] < SHAPE_SPAN[0] * T || t[i] > SHAPE_SPAN[1] * T) continue;
    all++;
    if (hipBend[i] < BENT) continue;
    bent++;
    if (kneeBend[i] >= BENT) tucked++;
  }
  if (bent < SHAPE_SHARE * all || all === 0) return 'straight';
  return 2 * tucked >= bent ? 'tuck' : 'pike';
}

/** The columns of a flight's frames; a bent lower back bends the upper body to the thighs too. */
export function codeColumns(body: Body, frames: Frames): CodeColumns {
  const column = (name: string): Float64Array | undefined => {
    const i = body.angles.findIndex((a) => a.name === name);
    return i < 0
      ? undefined
      : Float64Array.from({ length: frames.n }, (_, k) => frames.angles[k * body.angles.length + i]);
  };
  const both = (name: string): Float64Array | undefined => {
    const [left, right] = [column(`${name}L`), column(`${name}R`)];
    return left && right ? left.map((x, i) => (x + right[i]) / 2) : undefined;
  };
  const hip = both('hipFlexion');
  const knee = both('kneeFlexion');
  const back = column('lumbarFlexion');
  return {
    t: frames.t,
    somersault: frames.somersault,
    twist: frames.twist,
    ...(hip ? { hipBend: back ? hip.map((x, i) => x + back[i]) : hip } : {}),
    ...(knee ? { kneeBend: knee } : {}),
    ...(frames.undefinedFrom === undefined ? {} : { undefinedFrom: frames.undefinedFrom }),
  };
}

/** The code alone, for a draft that has to fly to it. */
export function readFlownCode(body: Body, frames: Frames): TrampolineCode | undefined {
  const found = codeOfFlight(codeColumns(body, frames));
  return found.kind === 'code' ? found.code : undefined;
}
