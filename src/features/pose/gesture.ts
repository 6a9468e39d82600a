/**
 * One gesture of a hand on a limb: the limb is led from where it was when the gesture began, the shape held (or the moment) is changed, and the flight is
 * flown again at every move. Past what joints are known to do the limb lags behind the hand: as near as they can is looked for by flights, one of them
 * in the task of the move, the others each in a task of its own, and until then the limb follows by geometry alone.
 */
import { batch } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { calcGains } from '../../app/drag-plate.tsx';
import type { Page } from '../../app/page.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { adjustHeld } from '../../document/held-keys.ts';
import { type NamedDegrees, setPoseAt } from '../../document/pose-edits.ts';
import type { FlightResult } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { runSteps, type Stepping } from '../../ui/steps.ts';
import type { LagState } from './lag.ts';
import { limbOf } from './limb-end.ts';
import type { LimbWay, Work } from './limb-work.ts';
import { findTooFast, nearestSteps, onTheWaySteps, type TooFast } from './pace.ts';
import { poseTexts, wordLimb } from './words.ts';

export interface Gesture {
  move(way: LimbWay): void;
  settle(): void;
  abandon(): void;
}

/** What it is done with, and where it says what it did. */
interface GestureHost {
  readonly page: Page;
  readonly lag: LagState;
  readonly end: string;
  /** the shape that is changed as a whole; undefined: this moment is */
  readonly block: number | undefined;
  readonly sides: 'both' | 'one';
  work(): Work | undefined;
  setWork(work: Work | undefined): void;
  setActive(isActive: boolean): void;
  say(text: string): void;
  /** the way that the hand went last */
  went(way: LimbWay): void;
}

/** A share of the way, led and flown. */
interface Tried {
  readonly share: number;
  readonly led: ReturnType<Page['services']['posing']['lead']>;
  readonly file: SkillFile;
  /** left out: it cannot be flown, or not yet */
  readonly flown?: FlightResult;
  readonly tooFast: readonly TooFast[];
}

/** Most angles shown on the plate. */
const SHOWN = 2;
/** Flights in the task of a move: of all of the way. */
const AT_ONCE = 1;

const toDeg = (angles: readonly number[], names: readonly { readonly name: string }[]): NamedDegrees =>
  Object.fromEntries(names.map(({ name }, a) => [name, angles[a] * DEG]));

export function beginGesture(host: GestureHost): Gesture {
  const { page, lag, end, block, work, setWork } = host;
  const { flight, services, doc } = page;
  const { posing } = services;
  const limb = limbOf(end);
  const s = page.cursor.at();
  const mark = flight.result();
  const anchors = flight.anchors();
  const marked = mark.cautions;
  const before = posing.anglesAt(mark, s);
  const camera = posing.hold(mark.flight.body, before);
  const { angles: named } = mark.flight.body;
  let changed: NamedDegrees = {};
  /** px that the end has gone without being too fast, last */
  let reached = 0;
  let last: LimbWay | undefined;
  let drawn: Tried | undefined;
  let isExact = true;
  let wanted: Tried | undefined;
  let chase: Stepping | undefined;
  /** what was tried of the last way */
  let known: { readonly way: LimbWay; readonly tried: Map<number, Tried> } | undefined;

  const wordLines = (deg: NamedDegrees): string[] => {
    const was = (name: string): number => {
      const at = named.findIndex((a) => a.name === name || a.name === `${name}L`);
      return at < 0 ? 0 : before[at] * DEG;
    };
    return Object.entries(deg)
      .map(([name, now]) => ({ name, from: was(name), now, by: Math.abs(now - was(name)) }))
      .sort((a, b) => b.by - a.by)
      .slice(0, SHOWN)
      .map(({ name, from, now }) => `${wordJoint(name)} ${formatNumber(from, 0)}° → ${formatNumber(now, 0)}°`);
  };
  const fileOf = (deg: NamedDegrees): SkillFile => {
    const file = doc.isHeld() ? doc.marked() : doc.begin();
    return block === undefined
      ? setPoseAt(file, s, deg, { anchors, kind: 'stop' })
      : adjustHeld(file, block, deg, toDeg(before, named), anchors);
  };
  const isBoth = (way: LimbWay): boolean => (host.sides === 'both') !== way.other;
  const lead = (way: LimbWay, share: number) => {
    const [dx, dy] = way.by(share);
    const [a, b] = [dx / way.pxPerM, -dy / way.pxPerM];
    const along = (k: 0 | 1 | 2): number => a * way.view.right[k] + b * way.view.up[k];
    const by_B = [along(0), along(1), along(2)] as const;
    return posing.lead({ result: mark, t: s, end, by_B, toward_B: way.view.toward, both: isBoth(way) });
  };
  /** Flown in full, once: coarse flights see torques where there are none. */
  const tryShare = (way: LimbWay, share: number): Tried => {
    if (known?.way !== way) known = { way, tried: new Map() };
    const found = known.tried.get(share);
    if (found) return found;
    if (share === 0 && mark.file === doc.marked()) {
      const none: Tried = { share, led: lead(way, 0), file: mark.file, flown: mark, tooFast: [] };
      known.tried.set(share, none);
      return none;
    }
    const led = lead(way, share);
    const file = fileOf(led.changedDeg);
    let made: Tried = { share, led, file, tooFast: [] };
    try {
      const flown = services.flying.fly(file);
      made = { ...made, flown, tooFast: share > 0 ? findTooFast(flown.cautions, marked) : [] };
    } catch {
      // it cannot be flown, or not yet: the page flies it again and says why
    }
    known.tried.set(share, made);
    return made;
  };
  const workOf = (way: LimbWay, { led, share }: Pick<Tried, 'led' | 'share'>): Work => ({
    limb,
    end,
    both: isBoth(way),
    mark,
    t: s,
    camera,
    before,
    lines: wordLines(led.changedDeg),
    stopped: led.stopped,
    short: led.short,
    ...(share < 1 && wanted ? { tooFast: wanted.tooFast[0] } : {}),
  });
  const show = (way: LimbWay, share: number): void => {
    // opened meanwhile: a pose of this flight is none of another document's
    if (!flight.edited()) return;
    const tried = tryShare(way, share);
    reached = share * Math.hypot(...way.by(1));
    changed = tried.led.changedDeg;
    if (drawn === tried && !work()?.angles) return;
    drawn = tried;
    if (tried.flown) flight.expect(tried.flown);
    doc.draft(tried.file);
    setWork(workOf(way, tried));
  };
  /** The limb is brought as near to the hand as the joints can: all the way, or a share that is not too fast; `isStill`: the largest. */
  const follow = (way: LimbWay, isStill: boolean, atOnce: number, done: () => void = () => {}): boolean => {
    chase?.stop();
    let isDone = false;
    wanted = undefined;
    const whole = Math.hypot(...way.by(1));
    // what it reached before on a way like this one is a good guess
    const guess = Math.min(reached / whole, 0.99);
    const isTooMuch = (share: number): boolean => {
      const tried = tryShare(way, share);
      const isFound = tried.tooFast.length > 0;
      if (share === 1) wanted = isFound ? tried : undefined;
      // a hand that goes on before the place is found is followed by less
      else if (isFound && !isStill) reached = (share * whole) / 2;
      return isFound;
    };
    const steps = isStill ? nearestSteps(isTooMuch) : onTheWaySteps({ isTooMuch, guess });
    chase = runSteps(steps, atOnce, (share) => {
      isDone = true;
      batch(() => show(way, share));
      done();
    });
    if (!isDone && !isStill) {
      const share = guess > 0 ? guess : 0.5;
      const led = lead(way, share);
      setWork({ ...workOf(way, { led, share }), angles: led.angles });
    }
    return isDone;
  };
  const askedMore = () =>
    wanted && { file: fileOf(wanted.led.changedDeg), tooFast: wanted.tooFast, before: marked, anchors };
  const finish = (): void => {
    host.setActive(false);
    const done = work();
    const was = flight.before();
    const gains = was ? calcGains(was, flight.result().outline) : [];
    const asked = askedMore();
    if (!done || Object.keys(changed).length === 0) {
      doc.abandon();
      // not a degree of it can be had in this time: what is said of more time stays
      lag.settled(asked, false);
      if (!asked) setWork(undefined);
      return;
    }
    doc.settle((block === undefined ? poseTexts.moved : poseTexts.shaped)(wordLimb(limb, done.both)));
    lag.settled(asked, true);
    host.say(
      [wordLimb(limb, done.both), ...done.lines, ...gains.map((g) => `${g.name} ${g.from} → ${g.to}`)].join(', '),
    );
  };

  return {
    move: (way) => {
      // a pose of another document's flight is none of this one
      if (!flight.edited()) return;
      last = way;
      host.went({ ...way, other: false });
      isExact = false;
      lag.soon(() => {
        if (!wanted || work()?.end !== end) return;
        follow(way, true, 1, () => {
          isExact = true;
          const asked = askedMore();
          if (asked) lag.search(asked);
        });
      });
      // one picture for all of it
      batch(() => follow(way, false, AT_ONCE));
    },
    settle: () => {
      const way = last;
      if (!way || isExact || !flight.edited()) {
        chase?.stop();
        finish();
        return;
      }
      lag.stop();
      if (!follow(way, true, 1, finish)) doc.settleLater(() => chase?.finish());
    },
    abandon: () => {
      chase?.stop();
      host.setActive(false);
      setWork(undefined);
      lag.stop();
      doc.abandon();
      host.say(poseTexts.putBack);
    },
  };
}
