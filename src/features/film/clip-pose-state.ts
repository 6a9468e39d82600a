/** Posing over a clip: the figure of the frame that is shown, changed by a hand, and the flight that is made of all of them. */
import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { ClipSight, FlownAsPosed, PosedFrame } from '../../../sim/index.ts';
import { keptState, type Page } from '../../app/page.ts';
import { putVersion } from '../../app/put-version.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { JobCall } from '../../jobs/pool.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { clipPoseTexts as t, wordPosedCaution } from './clip-pose-words.ts';
import { posedOf } from './clip-posed.ts';
import { type ClipDesk, clipDeskOf } from './clip-state.ts';

/** as many as a flight is made of */
const MOST_POSED = 20;
const DEG = 180 / Math.PI;

interface MadeOfPoses {
  readonly letter: string;
  readonly flown: FlownAsPosed;
}

export interface ClipPosing {
  readonly desk: ClipDesk;
  /** all that were posed, at their times now */
  readonly posed: Accessor<readonly PosedFrame[]>;
  /** of the frame that is shown: as posed, or where posing begins; undefined without time or place */
  readonly here: Accessor<PosedFrame | undefined>;
  readonly isPosed: Accessor<boolean>;
  readonly isOn: Accessor<boolean>;
  take(): void;
  leave(): void;
  /** within a drag, until it is settled or abandoned */
  draft(posed: PosedFrame): void;
  settle(): void;
  abandon(): void;
  /** one step */
  put(posed: PosedFrame): void;
  /** rad */
  turnBy(what: 'turn' | 'twist' | 'tilt', by: number): void;
  swap(posed: PosedFrame): void;
  takeOff(posed: PosedFrame): void;
  readonly open: Accessor<readonly PosedFrame[]>;
  readonly work: Accessor<number | undefined>;
  readonly fault: Accessor<string | undefined>;
  readonly made: Accessor<MadeOfPoses | undefined>;
  make(): void;
  cancel(): void;
}

function makeClipPosing(page: Page): ClipPosing {
  const { doc, shell, flight } = page;
  const desk = clipDeskOf(page);
  const [work, setWork] = createSignal<number>();
  const [fault, setFault] = createSignal<string>();
  const [made, setMade] = createSignal<MadeOfPoses & { readonly of: readonly PosedFrame[] }>();
  let call: JobCall<unknown> | undefined;
  const hasZero = (): boolean => Number.isFinite(desk.times()?.zero ?? Number.NaN);
  const raw = createMemo(() => posedOf(desk.measuring(), flight.result()));
  const posed = createMemo(() =>
    raw()
      .map((p) => ({ ...p, t: desk.timeOf(p.frame) }))
      .sort((a, b) => a.t - b.t),
  );
  /** before take-off and after the landing that was marked the athlete is on the floor: no moment of a flight is there */
  const isInAir = (s: number): boolean => {
    const air = desk.times()?.airTime;
    return s >= 0 && (!air || s <= air.value + (air.plusMinus || 0));
  };
  const here = createMemo((): PosedFrame | undefined => {
    const [room, frame] = [desk.room(), desk.frame()];
    if (!room || !desk.sight() || !hasZero() || desk.isStill() || !isInAir(desk.timeOf(frame))) return undefined;
    const own = posed().find((p) => p.frame === frame);
    return own ?? room.posings.first(flight.result(), posed(), frame, desk.timeOf(frame));
  });
  const at = (p: PosedFrame): string => formatNumber(desk.timeOf(p.frame), 2);
  const withOne = (one: PosedFrame): readonly PosedFrame[] => {
    const others = desk.measuring().posed.filter((p) => p.frame !== one.frame);
    if (others.length < MOST_POSED) return [...others, one];
    shell.notify({ text: t.full(MOST_POSED) });
    return desk.measuring().posed;
  };
  const put = (one: PosedFrame, title: string): void => desk.measure({ posed: withOne(one) }, title);
  const cancel = (): void => {
    call?.cancel();
    call = undefined;
    setWork(undefined);
  };
  const make = (): void => {
    const room = desk.room();
    const list = posed().filter(({ t: s }) => isInAir(s));
    if (!room) return;
    cancel();
    setMade(undefined);
    setFault(list.length < 2 ? t.fewInAir : undefined);
    if (list.length < 2) return;
    setWork(0);
    const from = doc.id();
    const next = room.posings.fly(
      flight.result(),
      t.name(doc.file().title).slice(0, 200),
      list,
      desk.sight(),
      desk.times()?.airTime,
      (share) => setWork(share),
    );
    call = next;
    next.done.then(
      (found) => {
        if (call !== next) return;
        cancel();
        if (!found || doc.id() !== from) return;
        const { file, flown } = found;
        putVersion(page, { name: t.version, file, isKept: false }, t.step, (letter) => {
          setMade({ letter, flown, of: raw() });
          const [first] = flown.cautions.filter(({ kind }) => kind === 'notOneFlight');
          shell.notify({
            text: first
              ? wordPosedCaution(first, formatNumber)
              : t.made(letter, `${formatNumber(flown.left * DEG, 1)}°`),
            action: { title: t.compare, run: () => shell.openTool('compare') },
          });
        });
      },
      (error: unknown) => {
        if (call !== next) return;
        cancel();
        setFault(wordFault(error));
      },
    );
  };
  return {
    desk,
    posed,
    here,
    isPosed: () => raw().some((p) => p.frame === desk.frame()),
    isOn: () => desk.hand() === 'pose',
    take: () => desk.setHand('pose'),
    leave: () => desk.setHand('look'),
    draft: (one) => desk.past.draft({ posed: withOne(one) }),
    settle: () => {
      const one = here();
      desk.past.settle(one ? t.posed(at(one)) : t.pose);
    },
    abandon: () => desk.past.abandon(),
    put: (one) => put(one, t.posed(at(one))),
    turnBy: (what, by) => {
      const [room, sight, one] = [desk.room(), desk.sight(), here()];
      if (!room || !sight || !one) return;
      const next = what === 'turn' ? room.posings.turn(one, sight, by) : room.posings[what](one, by);
      put(next, t.posed(at(next)));
    },
    swap: (one) => {
      const [room, sight] = [desk.room(), desk.sight()];
      if (room && sight) put(room.posings.swap(flight.result(), one, sight), t.swapped(at(one)));
    },
    takeOff: (one) =>
      desk.measure({ posed: desk.measuring().posed.filter((p) => p.frame !== one.frame) }, t.removed(at(one))),
    open: createMemo(() => openOf(desk.sight(), posed())),
    work,
    fault,
    made: () => (made()?.of === raw() ? made() : undefined),
    make,
    cancel,
  };

  function openOf(sight: ClipSight | undefined, list: readonly PosedFrame[]): readonly PosedFrame[] {
    const room = desk.room();
    return room && sight ? list.filter((p) => room.posings.isAmbiguous(flight.result(), p, sight)) : [];
  }
}

export const useClipPosing = keptState(makeClipPosing);
