/**
 * The flight unrolled along time: every pose is drawn at its own instant, at its true height, over the floor. The body is
 * seen from the side; only the mass centre's travel is pulled out to the ruler.
 */
import { flightApparatus } from './apparatus-flight.ts';
import { figureItems } from './figure.ts';
import { pathHeights, pathItems } from './flight-path.ts';
import { flightView } from './flight-view.ts';
import { readableGhosts, wordsIn } from './ghost-choice.ts';
import { ghostLayer } from './ghosts.ts';
import { fitHeights, HEIGHT_NOTE, heightLines, heightPx, type LengthMarks } from './heights.ts';
import { centreRadius, levelGuide, massCentreMark, wedge } from './marks.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { FigurePlace } from './posed-look.ts';
import type { DrawItem, Layer, Scene } from './scene.ts';
import { type OtherVersion, versionFigures, versionPaths, versionsKey } from './version-ghost.ts';
import { dot } from './view.ts';

interface FlightWindow {
  readonly width: number;
  readonly height: number;
  /** px of t = 0 */
  readonly x0: number;
  readonly pxPerS: number;
  readonly pxPerM: number;
  /** px of the floor (W's Y = 0) from the top; usually the height of the window */
  readonly floorY: number;
  /** right edge of the height labels, px */
  readonly labelX: number;
  readonly labelSize?: number;
  readonly marks?: LengthMarks;
  /** ghosts at most */
  readonly ghosts?: number;
}

interface FlightSceneInput {
  readonly flight: StageFlight;
  readonly cursor: StagePose;
  readonly window: FlightWindow;
  readonly others?: readonly OtherVersion[];
  /** at the landing wedge, e.g. '6° short' */
  readonly landingLabel?: string;
  /** false: no level (print) */
  readonly guides?: boolean;
  /** how it lands is said elsewhere: no wedge there, no level */
  readonly calm?: boolean;
  /** from the mass centre to the floor, where a plumb line goes on */
  readonly plumb?: boolean;
}

/** Ghosts where nobody asks for fewer. */
const MOST = 5;

export function flightScene(input: FlightSceneInput): Scene {
  const { flight, cursor, window: w, others = [] } = input;
  const size = w.labelSize ?? 12.5;
  const view = flightView(flight);
  const ends = [flight, ...others.map((o) => o.flight)].map(pathHeights);
  const heights = fitHeights(
    w.floorY,
    w.pxPerM,
    Math.max(...ends.map((e) => e.top)),
    Math.max(...ends.map((e) => e.low)),
  );
  const x = (t: number): number => w.x0 + t * w.pxPerS;
  const y = (height: number): number => heightPx(heights, height);
  const { lines, labels } = heightLines(heights, {
    labelX: w.labelX,
    from: w.labelX + 8,
    to: w.width,
    size,
    marks: w.marks,
  });
  const place = { view, scale: w.pxPerM };
  const at = (pose: StagePose): readonly [number, number] => [x(pose.t), y(pose.p_WScm_W[1])];
  const [cx, cy] = at(cursor);

  const versionAt = ({ cursor: c, shiftS }: OtherVersion): FigurePlace => ({
    ...place,
    anchor: c.p_WScm_W,
    x: x(c.t - shiftS),
    y: y(c.p_WScm_W[1]),
  });
  const figure = versionFigures(others, versionAt, w.labelSize);
  const spot = { ...place, anchor: cursor.p_WScm_W, x: cx, y: cy, hit: 'figure' };
  figure.push(...figureItems(flight.body, cursor.frames, spot));

  const marks: DrawItem[] = input.calm ? [] : [...landingWedge(input, x, y)];
  if (input.plumb) marks.push(plumbLine(cx, cy, w.floorY));
  if (input.guides !== false && !input.calm) marks.push(levelGuide(cx, w.width, cy));
  marks.push(...massCentreMark(cx, cy, centreRadius(w.pxPerM)));

  const still = JSON.stringify([w, heights]);
  const apparatus = flightApparatus(flight, {
    width: w.width,
    // under the floor is the band that it is on
    height: w.floorY,
    pxPerM: w.pxPerM,
    left: w.labelX + 4,
    x,
    y,
  });
  const layers: Layer[] = [
    { name: 'heights', items: lines, key: still },
    { name: 'ground', items: apparatus.behind, key: `flight ${flight.key} ${still}` },
    ghostLayer(
      flight,
      readableGhosts(flight.ghosts, cursor, {
        ...place,
        at,
        most: w.ghosts ?? MOST,
        words: wordsIn(marks),
        ends: true,
      }),
      {
        ...place,
        name: 'flight',
        at,
      },
    ),
    {
      name: 'path',
      key: `flight ${flight.key} ${versionsKey(others)} ${still}`,
      items: [
        ...apparatus.front,
        ...versionPaths(others, (t, _x, py) => [x(t), y(py)]),
        ...pathItems(flight, (t, _x, py) => [x(t), y(py)]),
      ],
    },
    { name: 'figure', items: figure, sight: spot },
    { name: 'marks', items: marks },
    { name: 'text', items: labels, key: still },
  ];
  const notes = Number.isFinite(heights.breakY) ? [HEIGHT_NOTE] : [];
  return { width: w.width, height: w.height, background: 'air', layers, notes };
}

const plumbLine = (x: number, from: number, to: number): DrawItem => ({
  kind: 'line',
  points: Float32Array.from([x, from, x, to]),
  stroke: 'ink',
  width: 1.8,
});

/** Reached and wanted direction of the body's long axis at landing: solid is, dashed is wanted. */
function landingWedge(input: FlightSceneInput, x: (t: number) => number, y: (h: number) => number): DrawItem[] {
  const { flight, window: w } = input;
  const wanted = flight.wantedSomersault;
  const last = flight.ghosts[flight.ghosts.length - 1];
  if (wanted === undefined || !last || !Number.isFinite(last.somersault)) return [];
  const view = flightView(flight);
  const screen = (angle: number): number => {
    const axis = [-Math.sin(angle), Math.cos(angle), 0] as const;
    return Math.atan2(-dot(axis, view.up), dot(axis, view.right));
  };
  let is = screen(last.somersault);
  let want = screen(wanted);
  // both lines are drawn upward from where the body's axis meets the surface
  if (Math.sin(is) > 0) is += Math.PI;
  if (Math.sin(want) > 0) want += Math.PI;
  const turn = Math.atan2(Math.sin(is - want), Math.cos(is - want));
  is = want + turn;
  const px = x(last.t);
  const py = y(last.p_WScm_W[1]);
  const down = y(flight.surfaceY) - py;
  const lean = Math.sin(is) < -0.35 && down > 0 ? down / Math.sin(is) : 0;
  const ox = px + Math.cos(is) * lean;
  const oy = lean === 0 ? py : y(flight.surfaceY);
  const length = 1.85 * w.pxPerM;
  const items = wedge(ox, oy, length, is, want, 'moving', 'ink', 'landing');
  if (input.landingLabel) {
    const ends = [ox + length * Math.cos(is), ox + length * Math.cos(want)];
    const right = Math.max(...ends);
    const room = right + 8 + input.landingLabel.length * 7 < w.width;
    items.push({
      kind: 'text',
      x: room ? right + 8 : Math.min(...ends) - 8,
      y: oy - length * 0.98,
      text: input.landingLabel,
      size: (w.labelSize ?? 12.5) + 0.5,
      weight: 640,
      fill: 'ink',
      anchor: room ? 'start' : 'end',
      halo: 'air',
    });
  }
  return items;
}
