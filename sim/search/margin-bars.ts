/**
 * Bars: how far one input may be off, to each side, before the landing leaves the window, all others as they are. From the
 * present value outwards in growing steps to the first place outside, then the edge between by bracketing (regula falsi,
 * Illinois: Dowell & Jarratt 1971, BIT 11:168). A window that is left and come back to inside one step can be missed.
 */
import { distanceIn, type Window } from './margin-window.ts';
import { wordFault } from './sample.ts';
import type { SampleFlyer } from './sample-fly.ts';
import { type SpreadPart, studyRange } from './sample-spread.ts';

export interface BarEnd {
  /** change of the input up to the edge; of a closed end the last change that is inside */
  readonly by: number;
  /** why it ends there: the landing leaves the window, the input's range ends, it cannot be flown beyond, or nothing so far */
  readonly ends: 'window' | 'range' | 'flight' | 'never';
  /** id of the result that leaves the window first */
  readonly result?: string;
  readonly fault?: string;
}

export interface Bar {
  /** id of the input, and its usual spread */
  readonly input: string;
  readonly spread: number;
  readonly low: BarEnd;
  readonly high: BarEnd;
  /** the nearer edge in units of the usual spread: the narrowest bar is the input that forgives least */
  readonly forgives: number;
}

/** First step, in units of the spread; how steps grow; how far is far enough. */
const STEPS = { first: 0.5, growth: 1.5, farthest: 50 };
/** Edges are found to this share of the spread. */
const EXACT = 1e-4;

interface Look {
  /** distance from the middle of the window less 1: negative inside */
  readonly off: number;
  readonly worst: number;
  readonly fault?: string;
}

/** One bar for each part, in their order. The skill as written must be inside the window. */
export function calcBar(flyer: SampleFlyer, parts: readonly SpreadPart[], bounds: Window, index: number): Bar {
  const part = parts[index];
  const now = parts.map((p) => p.input.value);
  const look = (change: number): Look => {
    const at = now.slice();
    at[index] += change;
    try {
      const outcome = flyer.outcomeAt(at);
      const { distance, worst } = distanceIn(
        bounds,
        bounds.map((b) => b.result.get(outcome)),
      );
      return { off: distance - 1, worst };
    } catch (error) {
      return { off: Number.POSITIVE_INFINITY, worst: -1, fault: wordFault(error) };
    }
  };
  const here = look(0);
  const low = findEnd(look, here, part, -1, bounds);
  const high = findEnd(look, here, part, 1, bounds);
  return {
    input: part.input.id,
    spread: part.by,
    low,
    high,
    forgives: Math.min(Math.abs(low.by), Math.abs(high.by)) / part.by,
  };
}

function findEnd(
  look: (change: number) => Look,
  here: Look,
  { input, by }: SpreadPart,
  side: 1 | -1,
  bounds: Window,
): BarEnd {
  const [least, most] = studyRange(input);
  const room = side > 0 ? most - input.value : input.value - least;
  let a = { x: 0, look: here };
  if (!(here.off < 0)) return { by: 0, ends: 'window', result: bounds[here.worst]?.result.id };
  let step = STEPS.first * by;
  for (;;) {
    const x = Math.min(room, a.x + step, STEPS.farthest * by);
    if (x <= a.x) return { by: side * a.x, ends: 'range' };
    const b = { x, look: look(side * x) };
    if (b.look.off >= 0) return close(look, a, b, side, by, bounds);
    if (x >= STEPS.farthest * by) return { by: side * x, ends: 'never' };
    if (x >= room) return { by: side * x, ends: 'range' };
    a = b;
    step *= STEPS.growth;
  }
}

interface Place {
  readonly x: number;
  readonly look: Look;
}

/** Between a place inside and one outside. */
function close(
  look: (change: number) => Look,
  from: Place,
  to: Place,
  side: number,
  by: number,
  bounds: Window,
): BarEnd {
  let a = from;
  let b = to;
  let fa = a.look.off;
  let fb = b.look.off;
  let last = 0;
  for (let i = 0; i < 60 && b.x - a.x > EXACT * by; i++) {
    const halve = !Number.isFinite(fb) || i % 6 === 5;
    let x = halve ? (a.x + b.x) / 2 : (a.x * fb - b.x * fa) / (fb - fa);
    if (!(x > a.x && x < b.x)) x = (a.x + b.x) / 2;
    const c = { x, look: look(side * x) };
    if (c.look.off < 0) {
      a = c;
      fa = c.look.off;
      if (last < 0) fb /= 2;
      last = -1;
    } else {
      b = c;
      fb = c.look.off;
      if (last > 0) fa /= 2;
      last = 1;
    }
  }
  const { worst, fault } = b.look;
  if (fault !== undefined) return { by: side * a.x, ends: 'flight', fault };
  return { by: side * a.x, ends: 'window', result: bounds[worst].result.id };
}
