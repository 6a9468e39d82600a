/**
 * One picture of a moving picture, as a list: the flight from one side, under it the floor as its ruler with the time, and what is
 * written all through it. The flight is in px of the scene; what is written in units, SHORT of them to the shorter side, so that
 * it is as large in every size.
 */
import { frontScene } from './front-scene.ts';
import type { LengthMarks } from './heights.ts';
import { largeScene } from './large-scene.ts';
import { closeScale, fitMoving, type MovingView, movingView } from './moving-place.ts';
import {
  type LiveNumber,
  layWriting,
  type MovingWords,
  type TextWidth,
  type WrittenLayout,
  writing,
} from './moving-words.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import { joinScenes, type PictureSize, type Scene } from './scene.ts';
import { type ScaleWindow, sideScene } from './side-scene.ts';
import { topScene } from './top-scene.ts';
import { dot } from './view.ts';

const SHORT = 360;
/** Heights beside the flight, and its letters, units. */
const LABELS = { width: 40, edge: 34, size: 11.5 } as const;
const MARGIN = 14;
const AIR_ABOVE = 6;

export interface MovingSetting {
  readonly view: MovingView;
  /** px of the finished picture */
  readonly size: PictureSize;
  /** s of the flight */
  readonly span: readonly [from: number, to: number];
  readonly words: MovingWords;
  readonly marks: LengthMarks;
}

/** What is the same in every picture. */
interface MovingLayout extends PictureSize {
  /** px of the finished picture to one of the scene */
  readonly ratio: number;
  /** px of the scene to a unit */
  readonly unit: number;
  readonly written: WrittenLayout;
  /** undefined: the camera goes with the athlete */
  readonly window?: ScaleWindow;
}

/** The lines of a figure keep their width on small screens and grow on large ones, to twice. */
const ratioOf = ({ width, height }: PictureSize): number =>
  Math.min(2, Math.max(1, (0.75 * Math.min(width, height)) / SHORT));

export function layMoving(
  setting: MovingSetting,
  flight: StageFlight,
  poses: readonly StagePose[],
  numbers: ((t: number) => readonly LiveNumber[]) | undefined,
  widthOf: TextWidth,
): MovingLayout {
  const { size, view, span, words } = setting;
  const ratio = ratioOf(size);
  const [width, height] = [size.width / ratio, size.height / ratio];
  const unit = Math.min(width, height) / SHORT;
  const written = layWriting({ width: width / unit, height: height / unit }, words, span, numbers, widthOf);
  const layout = { width, height, ratio, unit, written };
  if (view === 'close') return layout;
  const window = fitMoving(flight, poses, view, {
    width,
    height: written.air * unit,
    labels: (view === 'side' ? LABELS.width : MARGIN) * unit,
    head: (written.head + AIR_ABOVE) * unit,
  });
  return { ...layout, window: { ...window, marks: setting.marks } };
}

export function movingScene(
  setting: MovingSetting,
  layout: MovingLayout,
  flight: StageFlight,
  pose: StagePose,
  numbers: readonly LiveNumber[],
): Scene {
  const { width, height, unit, written } = layout;
  const words = writing(written, unit, setting.words, setting.span, pose.t, numbers);
  return joinScenes(width, height, [
    { scene: flightOf(setting.view, layout, flight, pose), x: 0, y: 0 },
    { scene: { width, height, background: 'air', layers: words, notes: [] }, x: 0, y: 0 },
  ]);
}

function flightOf(view: MovingView, l: MovingLayout, flight: StageFlight, cursor: StagePose): Scene {
  if (view === 'close' || !l.window) return closeScene(l, flight, cursor);
  const { unit } = l;
  const input = { flight, cursor, window: l.window, guides: false };
  if (view === 'front') return frontScene(input);
  if (view === 'top') return topScene(input);
  return sideScene({
    ...input,
    window: { ...l.window, labelX: LABELS.edge * unit, labelSize: LABELS.size * unit },
  });
}

/** The large stage with a camera that goes with the athlete. */
function closeScene({ width, unit, written }: MovingLayout, flight: StageFlight, cursor: StagePose): Scene {
  const { right, up } = movingView('close', flight.v_WScm_W0[0]);
  const [height, head] = [written.air * unit, written.head * unit];
  const pxPerM = closeScale(flight, width, height - head);
  return largeScene({
    flight,
    cursor,
    width,
    height,
    look: {
      view: 'side',
      follow: true,
      pxPerM,
      across: dot(cursor.p_WScm_W, right),
      // in the middle of what the words at the head leave
      up: dot(cursor.p_WScm_W, up) + head / 2 / pxPerM,
      steps: 3,
      show: { path: true, before: false, everyStep: false, paths: false, arrows: false, sizes: false },
    },
    words: NO_WORDS,
  });
}

const none = (): string => '';
/** Of sizes and arrows, which are not shown. */
const NO_WORDS = {
  apex: none,
  rise: none,
  travel: none,
  surface: none,
  length: none,
  momentum: '',
  axis: '',
  measured: '',
};
