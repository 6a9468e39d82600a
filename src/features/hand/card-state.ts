/** The card as its maker has it: which instants, which cues and whether they were read, and the room for error once it is computed. */
import { type Accessor, createEffect, createMemo, createSignal, untrack } from 'solid-js';
import type { Cue } from '../../../sim/words/cue-words.ts';
import type { Page } from '../../app/page.ts';
import { wholeStateOf } from '../../app/whole-state.ts';
import type { RoomBar } from '../../engine/room.ts';
import type { CardInstant } from '../../paper/card.ts';
import type { ViewedPose } from '../../paper/card-figures.ts';
import type { Paper } from '../../paper/paper.ts';
import type { PaperFlight } from '../../paper/paper-flight.ts';
import { cardTexts as t } from './card-words.ts';
import { useLater } from './later.ts';

/** Endings that are none on the feet, in which knees are not soft. */
const NOT_ON_FEET = new Set(['enters', 'atRail', 'inAir', 'bounces', 'down']);
const NO_TOUCH = new Set(['atRail', 'inAir']);

export interface CardState {
  readonly paper: Accessor<Paper | undefined>;
  readonly flight: Accessor<PaperFlight | undefined>;
  readonly cues: Accessor<readonly Pick<Cue, 'from' | 'to' | 'text'>[]>;
  setCue(index: number, text: string): void;
  /** of the cues as they are now */
  readonly isRead: Accessor<boolean>;
  read(): void;
  readonly instants: Accessor<readonly CardInstant[]>;
  move(index: number, t: number): void;
  /** as many as there are instants, once they are turned */
  readonly figures: Accessor<readonly ViewedPose[] | undefined>;
  readonly room: Accessor<readonly RoomBar[] | undefined>;
  setRoom(bars: readonly RoomBar[]): void;
}

export function makeCardState(page: Page): CardState {
  const { services, shell, doc } = page;
  const [paper, setPaper] = createSignal<Paper>();
  const [written, setWritten] = createSignal<{ key: string; texts: readonly string[] }>();
  const [seen, setSeen] = createSignal('');
  const [moved, setMoved] = createSignal<{ key: string; times: readonly number[] }>();
  const [room, setRoom] = createSignal<{ key: string; bars: readonly RoomBar[] }>();
  const isOpen = (): boolean => shell.tool() === 'hand';
  createEffect(() => {
    if (isOpen() && !untrack(paper)) void services.load.paper().then((made) => setPaper(() => made));
  });
  const result = createMemo(() => (isOpen() ? page.flight.result() : undefined));
  const key = (): string => result()?.key ?? '';
  const flight = createMemo(() => {
    const flown = result();
    return flown && paper()?.makeFlight(flown, `card ${flown.key}`);
  });
  const ending = createMemo(() => wholeStateOf(page).verdict().ending.kind);
  const offered = createMemo((): readonly Cue[] => {
    const now = flight();
    return now ? (paper()?.offerCues(now, !NOT_ON_FEET.has(ending())) ?? []) : [];
  });
  const cues = createMemo(() => {
    const own = written();
    return offered().map((cue, i) => (own?.key === key() ? { ...cue, text: own.texts[i] ?? cue.text } : cue));
  });
  const asSeen = (): string => JSON.stringify([key(), cues().map(({ text }) => text)]);
  const chosen = createMemo((): readonly CardInstant[] => {
    const now = flight();
    if (!now) return [];
    const isReleased = doc.file().phases[0]?.kind === 'swing';
    return (
      paper()?.chooseInstants(offered(), {
        duration: now.duration,
        apex: now.apex,
        start: isReleased ? t.at.release : t.at.start,
        end: t.at[
          ending() === 'enters' ? 'enters' : ending() === 'atRail' ? 'catches' : ending() === 'inAir' ? 'ends' : 'lands'
        ],
        touches: [!isReleased, !NO_TOUCH.has(ending())],
      }) ?? []
    );
  });
  const instants = createMemo((): readonly CardInstant[] => {
    const own = moved();
    if (own?.key !== key()) return chosen();
    return chosen().map((one, i) => (own.times[i] === one.t ? one : { t: own.times[i], word: '' }));
  });
  const figures = useLater<readonly ViewedPose[]>(() => {
    const [now, made, list] = [flight(), paper(), instants()];
    if (!now || !made || list.length === 0) return undefined;
    return function* () {
      const out: ViewedPose[] = [];
      for (const { t: at } of list) out.push(yield* made.viewPose(now, at));
      return out;
    };
  });
  return {
    paper,
    flight,
    cues,
    setCue: (index, text) => {
      setWritten({ key: key(), texts: cues().map((cue, i) => (i === index ? text : cue.text)) });
    },
    isRead: () => seen() === asSeen(),
    read: () => setSeen(asSeen()),
    instants,
    move: (index, at) => {
      const times = instants().map((one) => one.t);
      const [least, most] = [(times[index - 1] ?? 0) + 0.02, (times[index + 1] ?? flight()?.duration ?? 0) - 0.02];
      // take-off and end are where they are
      if (index === 0 || index === times.length - 1 || !(least <= most)) return;
      setMoved({ key: key(), times: times.with(index, Math.min(Math.max(at, least), most)) });
    },
    figures: figures.made,
    room: () => (room()?.key === key() ? room()?.bars : undefined),
    setRoom: (bars) => setRoom({ key: key(), bars }),
  };
}
