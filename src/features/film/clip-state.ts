/** The clip that is open: kept while the page is, on this machine alone. What cannot be read leaves it as it was. */
import { type Accessor, createEffect, createMemo, createSignal, on, onCleanup, untrack } from 'solid-js';
import type {
  Athlete,
  ClipFrames,
  ClipMark,
  ClipMeasured,
  FlownTimes,
  MarkKind,
  Measured,
  ShownInstant,
} from '../../../sim/index.ts';
import { keptState, type Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Loaders } from '../../app/services.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { makeClipCalc } from './clip-calc.ts';
import { fileOf, type KeptClip, ofSent, SENT_BESIDE, withKept } from './clip-kept.ts';
import { type MarkWanted, nextMarks, putMark, sayMark, takeOffMark } from './clip-marks.ts';
import { type ClipOpening, makeClipOpening, SPAN } from './clip-opening.ts';
import type { ClipHand, ClipState } from './clip-page.ts';
import { type MeasuringPast, makeMeasuringPast, UNMEASURED } from './clip-past.ts';
import { beginPlacing, isPlacing } from './clip-placing.ts';
import { posedOf } from './clip-posed.ts';
import { readMeasured, storeMeasured } from './clip-store.ts';
import { onStretch, stretchOf } from './clip-stretch.ts';
import { type ClipTime, makeClipTime } from './clip-time.ts';
import { clipTexts as t } from './clip-words.ts';

type LoadedRoom = Awaited<ReturnType<Loaders['clip']>>;

/** Frames a second: a file that plays so, at 23.98 to 60, may have been slowed down by a phone (judgement). */
const DOUBTFUL = [23.5, 60.5] as const;
/** px of the longer side of a clip that is sent */
const MOST_SENT = 1280;
/** ms that a hand rests before what it measured is stored */
const STORE_REST = 200;
/** letters that the title of a recording may have */
const MOST_TITLE = 200;
/** share of the figure at first: half */
const HALF = 0.5;

export interface ClipDesk extends ClipState {
  /** what reads, computes and draws comes with the view */
  load(): Promise<LoadedRoom>;
  readonly room: Accessor<LoadedRoom | undefined>;
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
  /** m by which its mass centre is lower at landing than at take-off, as that of the clip is taken to be */
  readonly drop: Accessor<Measured | undefined>;
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
  /** what is kept with the skill */
  readonly kept: Accessor<KeptClip | undefined>;
  readonly keptFault: Accessor<string | undefined>;
  /** the clip that came with it */
  openSent(): void;
  /** one step of the skill, with undo there */
  keep(): void;
  /** where the clip leaves this machine */
  readonly blurs: Accessor<boolean>;
  setBlurs(on: boolean): void;
  /** for a projector */
  readonly blursHere: Accessor<boolean>;
  setBlursHere(on: boolean): void;
  /** the clip travels too; never remembered */
  readonly sends: Accessor<boolean>;
  setSends(on: boolean): void;
}

/** m; of a tree of parts, that of nobody */
const bodyHeight = (athlete: Athlete): number => (athlete.kind === 'human' ? athlete.statureM : 1.7);

/** Of the clip only what is marked is sent, with a little before and after; without marks all that is on the ruler. */
function sentFrames(all: ClipFrames, marks: readonly ClipMark[]): [number, number] {
  const last = all.t.length - 1;
  if (marks.length === 0) return [0, last];
  const at = marks.map(({ frame }) => all.t[Math.min(frame, last)]);
  const [from, to] = [Math.min(...at) - SENT_BESIDE, Math.max(...at) + SENT_BESIDE];
  return [all.t.findIndex((s) => s >= from), all.t.findLastIndex((s) => s <= to)];
}

function makeClipDesk({ services, shell, flight, cursor, doc }: Page): ClipDesk {
  const [room, setRoom] = createSignal<LoadedRoom>();
  const [hand, setHand] = createSignal<ClipHand>('look');
  const [figure, setFigure] = createSignal(HALF);
  const [isApart, setApart] = createSignal(false);
  const [isAway, setAway] = createSignal(false);
  const [blurs, setBlurs] = createSignal(true);
  const [blursHere, setBlursHere] = createSignal(false);
  const [isAsked, setAsked] = createSignal(false);
  const load = async (): Promise<LoadedRoom> => {
    const loaded = await services.load.clip();
    setRoom(() => loaded);
    return loaded;
  };
  const past: MeasuringPast = makeMeasuringPast(
    () => shell.takeUndo(past.undoing),
    // a figure that is posed is posed on
    () => void setHand((now) => (now === 'pose' ? now : 'look')),
  );
  /** what was measured in clips of this visit, by name, size and stretch: opened again it is there again */
  const known = new Map<string, ClipMeasured>();
  let nowOpen = '';
  /** the clip that came with the skill, where that was opened */
  let sent: File | undefined;
  const opening = makeClipOpening(
    load,
    ({ clip: { facts } }) => {
      if (nowOpen) known.set(nowOpen, past.measuring());
      nowOpen = stretchOf(facts, 0);
      const isDoubtful = facts.fileHz > DOUBTFUL[0] && facts.fileHz < DOUBTFUL[1];
      const fresh = facts.kind === 'moving' && !isDoubtful ? { ...UNMEASURED, trueHz: facts.fileHz } : UNMEASURED;
      const before = kept();
      // of a long clip it is not known which stretch was on the ruler
      const isSame = before?.name === facts.name && facts.lasts <= SPAN;
      const isSent = isSame && facts.bytes === sent?.size;
      const engine = room()?.engine;
      const stored = engine && readMeasured(nowOpen, engine, flight.result());
      past.begin(known.get(nowOpen) ?? stored ?? (isSent ? ofSent(before) : isSame ? before.measured : fresh));
      time.setClose(true);
      // where marks are known already, the flight is what is looked at
      time.setFrame(past.measuring().marks.find(({ kind }) => kind === 'takeoff')?.frame ?? 0);
      setHand('look');
      shell.clipDoor.setSends(false);
      setAsked(false);
      setBlurs(true);
    },
    (now, before) => {
      known.set(nowOpen, past.measuring());
      nowOpen = stretchOf(now.clip.facts, now.from);
      const engine = room()?.engine;
      const there = known.get(nowOpen) ?? (engine && readMeasured(nowOpen, engine, flight.result()));
      const { measuring: next, isSome } = onStretch(past.measuring(), before.span, now.span, there);
      if (isSome) shell.notify({ text: t.leftBehind });
      past.begin(next);
      time.setFrame(0);
    },
  );
  const { measuring } = past;
  const calc = makeClipCalc({ opening, measuring, engine: () => room()?.engine, flight, doc });
  const { frames, marks, times, kept } = calc;
  const time = makeClipTime(frames, calc.live, () => flight.result().flight.duration);
  const instant = createMemo((): ShownInstant | undefined => {
    const [now, engine, found] = [frames(), room()?.engine, times()];
    // a still picture is of any instant: of the one at the cursor
    if (now && Number.isNaN(now.hz)) return { t: cursor.at(), is: 'in' };
    return now && engine && found ? engine.instant(now, found, time.frame(), flight.result()) : undefined;
  });
  const quarters = createMemo((): number => {
    const { somersault } = flight.result().frames;
    // one that is three quarters done is marked too
    return Math.round(Math.abs((somersault.at(-1) ?? 0) - somersault[0]) / (Math.PI / 2) - 0.25) || 0;
  });
  const put = (wanted: MarkWanted, frame: number, title: string): void =>
    past.measure({ marks: putMark(marks(), wanted, frame) }, title);
  shell.clipDoor.offer(() => {
    const [now, reader, all] = [opening.opened(), room()?.reader, frames()];
    // a still picture has no times to be kept: there is nothing that it would go along with
    if (!now || !reader || !all || now.clip.facts.kind === 'still') return undefined;
    const isBlurred = blurs();
    const [from, to] = sentFrames(all, marks());
    const sending = { from, to, isBlurred, most: MOST_SENT };
    return {
      name: now.clip.facts.name,
      isBlurred,
      write: (made, signal) => reader.write(now.clip, sending, made, signal),
    };
  });
  /** as a file has it; throws where it cannot be one */
  const writeEntry = (): ReturnType<LoadedRoom['engine']['write']> | undefined => {
    const [now, engine, clip] = [frames(), room()?.engine, opening.opened()?.clip];
    if (!now || !engine || !clip) return undefined;
    const { name } = clip.facts;
    const found = calc.live();
    return engine.write(
      {
        title: name.slice(0, MOST_TITLE),
        file: name,
        picture: { width: now.width, height: now.height },
        measured: { ...measuring(), marks: calc.placed(), posed: posedOf(measuring(), flight.result()) },
        ...(found && { times: found, start: now.t[0] - found.zero }),
      },
      flight.result(),
    );
  };
  let isRefused = false;
  const store = (): void => {
    let entry: ReturnType<typeof writeEntry>;
    try {
      entry = writeEntry();
    } catch {
      // marks that fit no flight: said where they are, and none to be kept
      return;
    }
    if (!entry) return;
    const isStored = storeMeasured(nowOpen, measuring(), entry);
    if (!isStored && !isRefused) shell.notify({ text: t.notStored });
    isRefused = !isStored;
  };
  createEffect(
    on(
      measuring,
      () => {
        const timer = setTimeout(store, STORE_REST);
        onCleanup(() => clearTimeout(timer));
      },
      { defer: true },
    ),
  );
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
    flown: calc.flown,
    drop: calc.drop,
    timesFault: calc.timesFault,
    sight: calc.sight,
    sightFault: calc.sightFault,
    instant,
    frame: time.frame,
    setFrame: (k) => {
      time.play.pause();
      time.setFrame(k);
    },
    timeOf: time.timeOf,
    isStill: () => opening.opened()?.clip.facts.kind === 'still',
    asksRate: () => opening.opened()?.clip.facts.kind === 'moving' && (measuring().trueHz === undefined || isAsked()),
    askRate: () => setAsked(true),
    markFaults: calc.markFaults,
    setRate: (typed) => {
      setAsked(false);
      const fileHz = opening.opened()?.clip.facts.fileHz ?? typed;
      const hz = room()?.engine.takenRate(fileHz, typed) ?? typed;
      const frame = untrack(time.frame);
      past.measure({ trueHz: hz }, t.rateStep(formatNumber(hz, Number.isInteger(hz) ? 0 : 2)));
      time.setFrame(frame);
    },
    wanted: createMemo(() => nextMarks(marks(), quarters())),
    mark: (kind: MarkKind, turn?: number) => {
      if (!calc.live()) return;
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
    kept,
    openSent: () => {
      const now = kept();
      if (now?.clip === undefined) return;
      sent = fileOf(now.clip, now.name);
      opening.open(sent);
    },
    keptFault: calc.keptFault,
    keep: () => {
      const engine = room()?.engine;
      const name = opening.opened()?.clip.facts.name;
      try {
        const entry = writeEntry();
        if (!entry || !engine || name === undefined) return;
        doc.edit(withKept(doc.file(), entry, engine), t.keepStep(name));
        // it is a step of the skill: undo takes it back there
        shell.takeUndo(undefined);
        shell.notify({ text: t.isKept(name), action: { title: t.undo, run: () => doc.undo() } });
      } catch (error) {
        shell.notify({ text: wordFault(error) });
      }
    },
    isApart,
    setApart,
    isAway,
    setAway,
    blurs,
    setBlurs,
    blursHere,
    setBlursHere,
    sends: shell.clipDoor.sends,
    setSends: shell.clipDoor.setSends,
  };
}

export const useClipDesk = keptState(makeClipDesk);
/** For who poses, or sends. */
export const clipDeskOf = (page: Page): ClipDesk => page.keepState(makeClipDesk);
