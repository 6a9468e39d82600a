/** What a hand does to the figure over a clip: pointer and keys, each drag a step. px of the plate, y down; `k`: px of it for one of the clip. */
import type { Accessor } from 'solid-js';
import type { PosedFrame, Spot } from '../../../sim/index.ts';
import { limbsUnder, pieceAt } from '../../app/limb-under.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { HeldLimb, LimbName } from '../../pictures/stage-input.ts';
import { startDrag } from '../../ui/drag.ts';
import type { ClipPosing } from './clip-pose-state.ts';

/** px of the clip that an arrow moves by, and with Shift */
const STEP = 2;
const BIG = 12;
const TURN = Math.PI / 90;
const BIG_TURN = Math.PI / 12;
const ARROWS: Readonly<Record<string, Spot>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** By its upper half a limb is led by elbow or knee, by the other by hand or foot. */
function endOf(limb: LimbName, isUpper: boolean): string {
  if (limb === 'head') return limb;
  const [upper, lower] = limb.startsWith('arm') ? ['elbow', 'hand'] : ['knee', 'foot'];
  return (isUpper ? upper : lower) + limb.slice(-1);
}

interface PoseHandsInput {
  readonly posing: Accessor<ClipPosing>;
  readonly here: Accessor<PosedFrame>;
  readonly k: Accessor<number>;
  readonly root: Accessor<HTMLElement>;
  readonly limbs: Accessor<readonly HeldLimb[]>;
  readonly middle: Accessor<Spot>;
  readonly result: Accessor<FlightResult>;
  setHover(limb: LimbName | undefined): void;
}

export function makePoseHands({ posing, here, k, root, limbs, middle, result, setHover }: PoseHandsInput) {
  const endAt = (from: PosedFrame, end: string): Spot => {
    const [room, sight] = [posing().desk.room(), posing().desk.sight()];
    const ends = room && sight ? room.posings.ends(result(), from, sight) : [];
    return ends.find((one) => one.end === end)?.at ?? [0, 0];
  };
  const lead = (from: PosedFrame, end: string, to: Spot, both: boolean): PosedFrame => {
    const [room, sight] = [posing().desk.room(), posing().desk.sight()];
    return room && sight ? room.posings.lead(result(), from, sight, end, to, both) : from;
  };
  const move = (from: PosedFrame, by: Spot): PosedFrame => {
    const [room, sight] = [posing().desk.room(), posing().desk.sight()];
    return room && sight ? room.posings.move(from, sight, by) : from;
  };
  const turn = (from: PosedFrame, by: number): PosedFrame => {
    const [room, sight] = [posing().desk.room(), posing().desk.sight()];
    return room && sight ? room.posings.turn(from, sight, by) : from;
  };
  const inPlate = (e: PointerEvent): Spot => {
    const box = root().getBoundingClientRect();
    return [e.clientX - box.left, e.clientY - box.top];
  };
  const under = (e: PointerEvent) =>
    limbsUnder(limbs(), ...(inPlate(e) as [number, number]), e.pointerType !== 'mouse')[0];
  const follow = (e: PointerEvent, at: (dx: number, dy: number, m: PointerEvent) => PosedFrame): void =>
    startDrag(e, {
      move: (dx, dy, m) => posing().draft(at(dx, dy, m)),
      end: (moved) => {
        if (moved) posing().settle();
      },
      cancel: () => posing().abandon(),
    });
  const press = (e: PointerEvent): void => {
    if ((e.target as Element).closest('.clip-ring')) return;
    const from = here();
    const limb = under(e);
    e.preventDefault();
    if (!limb) {
      root().querySelector<HTMLElement>('.clip-trunk')?.focus({ preventScroll: true });
      follow(e, (dx, dy) => move(from, [dx / k(), dy / k()]));
      return;
    }
    root().querySelector<HTMLElement>(`[data-limb="${limb.id}"]`)?.focus({ preventScroll: true });
    const end = endOf(limb.id, pieceAt(limb.line, ...(inPlate(e) as [number, number])) === 0);
    const [x, y] = endAt(from, end);
    follow(e, (dx, dy, m) => lead(from, end, [x + dx / k(), y + dy / k()], m.altKey));
  };
  const pressRing = (e: PointerEvent): void => {
    e.preventDefault();
    (e.currentTarget as HTMLElement).focus({ preventScroll: true });
    const from = here();
    const [cx, cy] = middle();
    const angle = (m: PointerEvent): number => {
      const [x, y] = inPlate(m);
      return Math.atan2(cy - y, x - cx);
    };
    const start = angle(e);
    let last = start;
    let turned = 0;
    follow(e, (_dx, _dy, m) => {
      const now = angle(m);
      turned += Math.atan2(Math.sin(now - last), Math.cos(now - last));
      last = now;
      return turn(from, turned);
    });
  };
  const keys = (act: (way: Spot, e: KeyboardEvent) => PosedFrame) => (e: KeyboardEvent) => {
    const way = ARROWS[e.key];
    if (!way || e.ctrlKey || e.metaKey) return;
    e.preventDefault();
    e.stopPropagation();
    posing().put(act(way, e));
  };
  const by = (e: KeyboardEvent): number => (e.shiftKey ? BIG : STEP);
  const limbKeys = (id: LimbName) =>
    keys((way, e) => {
      const end = endOf(id, e.altKey);
      const [x, y] = endAt(here(), end);
      return lead(here(), end, [x + by(e) * way[0], y + by(e) * way[1]], false);
    });
  const trunkKeys = keys((way, e) => move(here(), [by(e) * way[0], by(e) * way[1]]));
  const ringKeys = keys((way, e) => turn(here(), (way[0] + way[1] > 0 ? -1 : 1) * (e.shiftKey ? BIG_TURN : TURN)));
  const look = (e: PointerEvent): void => {
    if (e.pointerType === 'mouse' && e.buttons === 0) setHover(under(e)?.id);
  };
  return { press, pressRing, look, limbKeys, trunkKeys, ringKeys };
}
