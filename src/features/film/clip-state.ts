/** The clip that is open: kept while the page is, on this machine alone. What cannot be read leaves it as it was. */
import { type Accessor, createMemo, createSignal, untrack } from 'solid-js';
import type {
  Athlete,
  ClipFrames,
  ClipSight,
  ClipTimes,
  FlownTimes,
  MarkKind,
  ShownInstant,
} from '../../../sim/index.ts';
import { keptState, type Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Loaders } from '../../app/services.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type MarkWanted, nextMarks, putMark, sayMark, takeOffMark, wordMarkFault } from './clip-marks.ts';
import { type ClipOpening, makeClipOpening } from './clip-opening.ts';
import type { ClipHand, ClipMeasuring, ClipState } from './clip-page.ts';
import { type MeasuringPast, makeMeasuringPast, UNMEASURED } from './clip-past.ts';
import { beginPlacing, isPlacing } from './clip-placing.ts';
import { type ClipTime, makeClipTime } from './clip-time.ts';
import { clipTexts as t } from './clip-words.ts';

export type ClipRoom = Awaited<ReturnType<Loaders['clip']>>;

/** A file that plays at so many a second may have been slowed down by a phone. */
const DOUBTFUL = [24.5, 60.5] as const;
/** px of the longer side of a clip that is sent */
const MOST_SENT = 1280;
/** A at 55 % */
const HALF = 0.5;

export interface ClipDesk extends ClipState {
  /** what reads, computes and draws comes with the view */
  load(): Promise<ClipRoom>;
  readonly room: Accessor<ClipRoom | undefined>;
  readonly opening: ClipOpening;
  readonly past: MeasuringPast;
  readonly time: ClipTime;
  readonly isStill: Accessor<boolean>;
  /** the rate is asked before a time is said */
  readonly asksRate: Accessor<boolean>;
  setRate(hz: number): void;
  /** once more */
  askRate(): void;
  /** what is wrong with marks, in words */
  readonly markFaults: Accessor<readonly string[]>;
  /** what of A the frame shows; undefined before the take-off is marked */
  readonly instant: Accessor<ShownInstant | undefined>;
  /** what A has of the same */
  readonly flown: Accessor<FlownTimes | undefined>;
  /** why marks or rate cannot be computed with */
  readonly timesFault: Accessor<string | undefined>;
  readonly sightFault: Accessor<string | undefined>;
  /** crosses go back to where they were when they were taken up */
  abandonHand(): void;
  /** what M would mark, and what else there is */
  readonly wanted: Accessor<readonly MarkWanted[]>;
  moveMark(mark: MarkWanted, frame: number): void;
  takeOff(mark: MarkWanted): void;
  /** A beside the clip, not over it */
  readonly isApart: Accessor<boolean>;
  setApart(on: boolean): void;
  /** the figure is held away */
  readonly isAway: Accessor<boolean>;
  setAway(on: boolean): void;
  readonly blurs: Accessor<boolean>;
  setBlurs(on: boolean): void;
  /** the clip travels too; never remembered */
  readonly sends: Accessor<boolean>;
  setSends(on: boolean): void;
}

/** m; of a tree of parts, that of nobody */
const bodyHeight = (athlete: Athlete): number => (athlete.kind === 'human' ? athlete.statureM : 1.7);

function makeClipDesk({ services, shell, flight, cursor }: Page): ClipDesk {
  const [room, setRoom] = createSignal<ClipRoom>();
  const [hand, setHand] = createSignal<ClipHand>('look');
  const [figure, setFigure] = createSignal(HALF);
  const [isApart, setApart] = createSignal(false);
  const [isAway, setAway] = createSignal(false);
  const [blurs, setBlurs] = createSignal(true);
  const [isAsked, setAsked] = createSignal(false);
  const load = async (): Promise<ClipRoom> => {
    const loaded = await services.load.clip();
    setRoom(() => loaded);
    return loaded;
  };
  const past: MeasuringPast = makeMeasuringPast(() => shell.takeUndo(past.undoing));
  /** what was measured in clips of this visit, by name and size: opened again it is there again */
  const known = new Map<string, ClipMeasuring>();
  let nowOpen = '';
  const opening = makeClipOpening(
    load,
    ({ clip: { facts } }) => {
      if (nowOpen) known.set(nowOpen, past.measuring());
      nowOpen = `${facts.name} ${facts.bytes}`;
      const isDoubtful = facts.fileHz > DOUBTFUL[0] && facts.fileHz < DOUBTFUL[1];
      const fresh = facts.kind === 'moving' && !isDoubtful ? { ...UNMEASURED, trueHz: facts.fileHz } : UNMEASURED;
      past.begin(known.get(nowOpen) ?? fresh);
      time.setFrame(0);
      setHand('look');
      shell.clipDoor.setSends(false);
      setAsked(false);
      setBlurs(true);
    },
    (now, before) => {
      const stamps = [...now.span.stamps];
      const frameOf = (frame: number): number => stamps.indexOf(before.span.stamps[frame]);
      const { marks, posed, ...rest } = past.measuring();
      const stay = <T extends { readonly frame: number }>(list: readonly T[]): T[] =>
        list.flatMap((one) => (frameOf(one.frame) < 0 ? [] : [{ ...one, frame: frameOf(one.frame) }]));
      past.begin({ ...rest, marks: stay(marks), posed: stay(posed) });
      time.setFrame(0);
    },
  );
  const { measuring } = past;
  const trueHz = createMemo(() => measuring().trueHz);
  const lines = createMemo(() => measuring().lines);
  const read = createMemo((): { frames?: ClipFrames; fault?: string } => {
    const [now, hz, engine] = [opening.opened(), trueHz(), room()?.engine];
    if (!now || !engine) return {};
    const { facts } = now.clip;
    const { width, height } = facts;
    if (facts.kind === 'still')
      return { frames: { t: Float64Array.of(0), hz: Number.NaN, width, height, lines: Number.NaN } };
    if (hz === undefined) return {};
    try {
      const t = engine.trueTimes(now.span.stamps, facts.fileHz, hz);
      return { frames: { t, hz, width, height, lines: lines() ?? Number.NaN } };
    } catch (error) {
      return { fault: wordFault(error) };
    }
  });
  const frames = (): ClipFrames | undefined => read().frames;
  const marks = createMemo(() => measuring().marks);
  const feetRow = createMemo((): number | undefined => {
    const [stand, height] = [measuring().stand, frames()?.height];
    return stand && height ? Math.min(Math.max(stand.feet[1] / height, 0), 1) : undefined;
  });
  const calc = createMemo((): { times?: ClipTimes; fault?: string } => {
    const [now, engine] = [frames(), room()?.engine];
    if (!now || !engine || Number.isNaN(now.hz)) return {};
    try {
      const row = feetRow();
      // the feet leave and touch the floor at the same lines of the picture
      const placed = marks().map((mark) =>
        row !== undefined && mark.row === undefined && (mark.kind === 'takeoff' || mark.kind === 'landing')
          ? { ...mark, row }
          : mark,
      );
      return { times: engine.times(now, placed, flight.result()) };
    } catch (error) {
      return { fault: wordFault(error) };
    }
  });
  const times = (): ClipTimes | undefined => calc().times;
  const time = makeClipTime(frames, times, () => flight.result().flight.duration);
  const seen = createMemo((): { sight?: ClipSight; fault?: string } => {
    const [now, engine, { scale, stand, view }] = [frames(), room()?.engine, measuring()];
    if (!now || !engine || !scale || !stand) return {};
    try {
      return { sight: engine.sight(now, scale, stand, flight.result(), view) };
    } catch (error) {
      return { fault: wordFault(error) };
    }
  });
  const instant = createMemo((): ShownInstant | undefined => {
    const [now, engine, found] = [frames(), room()?.engine, times()];
    // a still picture is of any instant: of the one at the cursor
    if (now && Number.isNaN(now.hz)) return { t: cursor.at(), is: 'in' };
    return now && engine && found ? engine.instant(now, found, time.frame(), flight.result()) : undefined;
  });
  const quarters = createMemo((): number => {
    const { somersault } = flight.result().frames;
    return Math.round(Math.abs((somersault.at(-1) ?? 0) - somersault[0]) / (Math.PI / 2) - 0.25) || 0;
  });
  const put = (wanted: MarkWanted, frame: number, title: string): void =>
    past.measure({ marks: putMark(marks(), wanted, frame) }, title);
  shell.clipDoor.offer(() => {
    const [now, reader] = [opening.opened(), room()?.reader];
    if (!now || !reader) return undefined;
    const isBlurred = blurs();
    const sending = { from: 0, to: now.span.stamps.length - 1, isBlurred, most: MOST_SENT };
    return {
      name: now.clip.facts.name,
      isBlurred,
      write: (made, signal) => reader.write(now.clip, sending, made, signal),
    };
  });
  const settleHand = (): void => {
    const now = hand();
    if (isPlacing(now)) past.settle(t.placed[now]);
  };
  const takeUp = (next: ClipHand): void => {
    const size = frames();
    settleHand();
    if (isPlacing(next) && size) {
      past.draft(beginPlacing(next, measuring(), size, bodyHeight(flight.result().athlete)));
    }
    setHand(next);
  };
  return {
    load,
    room,
    opening,
    past,
    time,
    clip: () => opening.opened()?.clip,
    frames,
    measuring,
    measure: past.measure,
    times,
    flown: createMemo(() => {
      const [engine, found] = [room()?.engine, times()];
      return engine && found ? engine.flown(found, flight.result()) : undefined;
    }),
    timesFault: () => read().fault ?? calc().fault,
    sight: () => seen().sight,
    sightFault: () => seen().fault,
    instant,
    frame: time.frame,
    setFrame: (k) => {
      time.play.pause();
      time.setFrame(k);
    },
    timeOf: time.timeOf,
    isStill: () => opening.opened()?.clip.facts.kind === 'still',
    asksRate: () => opening.opened()?.clip.facts.kind === 'moving' && (trueHz() === undefined || isAsked()),
    askRate: () => setAsked(true),
    markFaults: () => calc().times?.faults.map((fault) => wordMarkFault(fault, marks())) ?? [],
    setRate: (hz) => {
      setAsked(false);
      const frame = untrack(time.frame);
      past.measure({ trueHz: hz }, t.rateStep(formatNumber(hz, Number.isInteger(hz) ? 0 : 2)));
      time.setFrame(frame);
    },
    wanted: createMemo(() => nextMarks(marks(), quarters())),
    mark: (kind: MarkKind, turn?: number) => {
      const wanted = turn === undefined ? { kind } : { kind, quarters: turn };
      const frame = time.frame();
      put(wanted, frame, t.marked(sayMark(wanted)));
      // zero may be another now
      time.setFrame(frame);
    },
    moveMark: (mark, frame) => put(mark, frame, t.moved(sayMark(mark))),
    takeOff: (mark) => past.measure({ marks: takeOffMark(marks(), mark) }, t.takenOff(sayMark(mark))),
    hand,
    setHand: takeUp,
    abandonHand: () => {
      past.abandon();
      setHand('look');
    },
    figure,
    setFigure: (share) => void setFigure(Math.min(Math.max(share, 0), 1)),
    isApart,
    setApart,
    isAway,
    setAway,
    blurs,
    setBlurs,
    sends: shell.clipDoor.sends,
    setSends: shell.clipDoor.setSends,
  };
}

export const useClipDesk = keptState(makeClipDesk);
/** For who poses, or sends. */
export const clipDeskOf = (page: Page): ClipDesk => page.keepState(makeClipDesk);
