/** A hand at work on the figure: what it changes, on how many sides, and what it did last. Kept for the page, so that every picture of the athlete shares it. */

import { batch, createEffect, createMemo, createSignal } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import { withoutSide } from '../../../sim/math/side.ts';
import { keptState, type Page } from '../../app/page.ts';
import { makeSaid } from '../../app/said.ts';
import { adjustHeld } from '../../document/held-keys.ts';
import { type NamedDegrees, setPoseAt } from '../../document/pose-edits.ts';
import { type BlockSpan, findSpan } from '../../document/spans.ts';
import { beginGesture, type Gesture } from './gesture.ts';
import { type LagState, makeLag } from './lag.ts';
import { limbOf } from './limb-end.ts';
import type { LimbWay, Work } from './limb-work.ts';
import { poseTexts, wordLimb } from './words.ts';

type Sides = 'both' | 'one';
type Scope = 'key' | 'shape';

function makeHand(page: Page) {
  const { flight, cursor, services, doc } = page;
  /** chosen by a person; left out: as the sides are */
  const [chosenSides, setSides] = createSignal<Sides>();
  const [scope, setScope] = createSignal<Scope>('shape');
  const [work, setWork] = createSignal<Work>();
  const [said, setSaid] = makeSaid(doc);
  const [active, setActive] = createSignal(false);
  const lag: LagState = makeLag(page);
  /** of the last gesture */
  let lastWay: LimbWay | undefined;

  /** the shape that is held at the cursor */
  const heldSpan = createMemo((): BlockSpan | undefined => {
    const found = findSpan(flight.spans(), cursor.at());
    return found?.held ? found.span : undefined;
  });
  const anglesNow = (): number[] => services.posing.anglesAt(flight.result(), cursor.at());
  /** What was done last with a limb is done on as many sides again. */
  const doneSides = (limb: string): Sides | undefined => {
    const done = shown();
    return done && withoutSide(done.limb) === withoutSide(limb) ? (done.both ? 'both' : 'one') : undefined;
  };
  /** Sides that are alike stay alike, unless it was chosen otherwise. */
  const sides = (limb: string): Sides =>
    chosenSides() ??
    doneSides(limb) ??
    (limb !== 'head' && services.posing.isAlike(flight.result().flight.body, anglesNow(), limb) ? 'both' : 'one');

  const heldDeg = (angles: readonly number[]): NamedDegrees =>
    Object.fromEntries(flight.result().flight.body.angles.map(({ name }, a) => [name, angles[a] * DEG]));

  const begin = (end: string): Gesture => {
    doc.finish();
    cursor.play.pause();
    lag.stop();
    setActive(true);
    return beginGesture({
      page,
      lag,
      end,
      block: scope() === 'shape' ? heldSpan()?.index : undefined,
      sides: sides(limbOf(end)),
      work,
      setWork,
      setActive,
      say: setSaid,
      went: (way) => {
        lastWay = way;
      },
    });
  };

  /** what the last gesture did is still what was done last, and shown */
  const shown = createMemo((): Work | undefined => {
    const now = work();
    if (!now) return undefined;
    return active() || (!doc.isHeld() && lag.isLast() && cursor.at() === now.t) ? now : undefined;
  });
  // the curves keep what was before for as long as the plate does
  createEffect(() => {
    const now = shown();
    if (now) flight.keepEarlier(now.mark, now.tooFast?.t);
  });
  /** Another choice for what was done last: it is done again by it. */
  const again = (choose: () => void): void => {
    doc.finish();
    const done = shown();
    const way = lastWay;
    if (!done || !way || !putBack()) {
      choose();
      return;
    }
    batch(choose);
    const gesture = begin(done.end);
    gesture.move(way);
    gesture.settle();
  };
  /** The move gets the time that it needs, and the limb is where it was asked for. */
  const giveMore = (): void => {
    doc.finish();
    lag.give();
    setWork((now) => {
      if (!now) return now;
      const { tooFast: _, ...rest } = now;
      return rest;
    });
  };
  /** Takes back what the last gesture did. */
  const putBack = (): boolean => {
    doc.finish();
    if (!work() || active() || doc.isHeld() || !lag.isLast()) return false;
    lag.undo();
    setWork(undefined);
    setSaid(poseTexts.putBack);
    return true;
  };

  createEffect(() => {
    const answer = page.shell.answer.said();
    const done = work();
    // by finger the button is beside the figure
    if (matchMedia('(pointer: coarse)').matches) return;
    if (answer?.from !== 'change' || answer.act || active() || !done || !lag.isLast()) return;
    page.shell.answer.say({
      ...answer,
      act: [{ label: poseTexts.putBackLimb(wordLimb(done.limb, done.both)), run: putBack }],
    });
  });

  /** Joint angles typed, or a pose from elsewhere: one step. */
  const put = (deg: NamedDegrees, title: string): void => {
    if (!flight.edited()) return;
    const anchors = flight.anchors();
    const block = scope() === 'shape' ? heldSpan()?.index : undefined;
    let file = doc.file();
    if (block === undefined) file = setPoseAt(file, cursor.at(), deg, { anchors, kind: 'stop' });
    else file = adjustHeld(file, block, deg, heldDeg(anglesNow()), anchors);
    doc.editSoon(file, title);
  };

  return {
    sides,
    chosenSides,
    setSides,
    scope,
    active,
    setScope,
    heldSpan,
    work,
    shown,
    giveMore,
    again,
    putBack,
    lag,
    begin,
    put,
    said,
    setSaid,
  };
}
export const useHand = keptState(makeHand);
