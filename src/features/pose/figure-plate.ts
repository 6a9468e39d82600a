/** What is beside a hand on the figure, px: the plate and its leader, the line to a limb that stays behind, the end of a range, and what none of them may cover. */
import { type Accessor, createMemo } from 'solid-js';
import type { FigureViews, HandlePlace, HeldViewName } from './figure-views.ts';
import { useHand } from './hand.ts';
import { boxOf } from './limb-boxes.ts';
import type { Finger } from './limb-drag.ts';
import type { ScreenPlace } from './limb-turn.ts';
import type { Work } from './limb-work.ts';
import type { MeantLimb } from './meant-limb.ts';
import { placePlate, toBox } from './plate-place.ts';
import { PLATE_WIDE, plateHeight, usePlateText } from './pose-plate.tsx';
import { rangeEnd } from './range-end.ts';

/** px between hand and plate; above a finger the finger itself is kept free */
const APART = { mouse: 12, touch: 60 } as const;
/** px: what is chosen has so much room at the bottom right, buttons in the corners at the left */
const OPTIONS = { wide: 164, row: 26, touchRow: 46, leastTouch: 300 } as const;
const CORNER = { mouse: [96, 42], touch: [128, 62] } as const;
const clampTo = (v: number, from: number, size: number): number => Math.min(Math.max(v, from), from + size);

export function useFigurePlate(
  props: HandlePlace & { readonly onLarger?: () => void },
  figure: FigureViews,
  meant: MeantLimb,
  finger: Accessor<Finger | undefined>,
) {
  const hand = useHand();
  const text = usePlateText(hand.shown);
  const viewOfWork = (): HeldViewName => finger()?.view ?? meant.focused()?.view ?? figure.views()[0];
  const handAt = (work: Work): ScreenPlace => {
    const at = finger();
    return at ? [at.x, at.y] : (figure.spotOf(viewOfWork(), work.end) ?? [0, 0]);
  };
  const hasOptions = (): boolean =>
    !props.both &&
    !hand.active() &&
    hand.shown() !== undefined &&
    (!props.touch || figure.height() >= OPTIONS.leastTouch);
  /** boxes of what can be pressed: no plate and no name goes there */
  const controls = (): Float32Array[] => {
    const [w, h] = CORNER[props.touch ? 'touch' : 'mouse'];
    const boxes: Float32Array[] = [];
    if (props.onLarger && !isTilted()) boxes.push(...boxOf(0, figure.height() - h, w, h));
    if (props.touch && hand.shown()) boxes.push(...boxOf(props.width - w, figure.height() - h, w, h));
    if (hasOptions()) {
      const tall = 3 * (props.touch ? OPTIONS.touchRow : OPTIONS.row);
      boxes.push(
        ...boxOf(
          isTilted() ? 0 : props.width - OPTIONS.wide,
          figure.height() - tall - (props.touch ? h : 0),
          OPTIONS.wide,
          tall,
        ),
      );
    }
    return boxes;
  };
  const isTilted = (): boolean => props.tiltDeg !== undefined;
  const plate = createMemo(() => {
    const work = hand.shown();
    const words = text();
    if (!work || !words) return undefined;
    const at = handAt(work);
    const wide = PLATE_WIDE[props.touch ? 'touch' : 'mouse'];
    const tall = plateHeight(words, work, wide);
    const room = {
      width: props.width,
      height: figure.height(),
      clear: [...figure.outlines(), ...controls()],
      hand: at,
    };
    const [x, y] = placePlate({ ...room, apart: finger()?.isTouch ? APART.touch : APART.mouse }, wide, tall);
    return { x, y, wide, tall, work, words, at };
  });
  const leader = () => {
    const p = plate();
    if (!p || toBox(...p.at, p.x, p.y, p.wide, p.tall) < 4) return undefined;
    const [x2, y2] = [clampTo(p.at[0], p.x, p.wide), clampTo(p.at[1], p.y, p.tall)];
    return { x1: p.at[0], y1: p.at[1], x2, y2 };
  };
  /** from the limb that lags, or cannot reach, to the hand */
  const behind = () => {
    const [at, work] = [finger(), hand.shown()];
    const end =
      at && work && (work.tooFast || work.stopped.length > 0 || work.short > 0.01)
        ? figure.spotOf(at.view, work.end)
        : undefined;
    return at && end ? { x1: end[0], y1: end[1], x2: at.x, y2: at.y } : undefined;
  };
  const tipOf = (view: HeldViewName, work: Work): ScreenPlace | undefined => {
    const tip = figure.limbIn(view, work.limb)?.line.at(work.limb === 'head' ? -1 : 3);
    return tip && [tip[0] + figure.leftOf(view), tip[1]];
  };
  const stop = () => {
    const [at, work] = [finger(), hand.shown()];
    if (!at || !work || work.stopped.length === 0) return undefined;
    const pivot = figure.limbIn(at.view, work.limb)?.line[0];
    const tip = tipOf(at.view, work);
    return pivot && tip && rangeEnd([pivot[0] + figure.leftOf(at.view), pivot[1]], tip, [at.x, at.y]);
  };
  return { plate, leader, behind, stop, controls, hasOptions };
}
