/**
 * A ready skill at equal times from take-off to touchdown, drawn by the scene: from the side, and where it twists also from the front of somebody who goes
 * over with it, so that tilt and twist are seen. `npm run sheet` writes the pictures of docs/skills-sheet.md.
 */
import { type Body, calcFrames, calcPose, type Flight, makeState, readState } from '../../sim/index.ts';
import { figureItems } from '../../src/scene/figure.ts';
import { svgMarkup } from '../../src/scene/figure-svg.ts';
import { heldView, sideView, type View } from '../../src/scene/view.ts';
import { picture, text } from './svg-parts.ts';

const INSTANTS = 8;
const WIDTH = 120;
const HEIGHT = 168;
/** px per m */
const SCALE = 66;

interface DrawnFlight {
  readonly title: string;
  readonly flight: Flight;
  /** s, of another number of instants than eight */
  readonly times?: readonly number[];
}

/** Equal times, take-off and touchdown among them. */
export const instantsOf = (duration: number, count = INSTANTS): number[] =>
  Array.from({ length: count }, (_, i) => (duration * i) / (count - 1));

/** About the lateral axis of the world alone: who looks goes over with the skill, and neither tilts nor twists. */
function overView(somersault: number): View {
  const [c, s] = [Math.cos(somersault), Math.sin(somersault)];
  return heldView([c, -s, 0, s, c, 0, 0, 0, 1]);
}

/** Whether it is to be seen from the front too. */
const twists = (twist: Float64Array): boolean => Math.abs(twist[twist.length - 1] - twist[0]) > 0.5;

export function skillPicture({ title, flight, times = instantsOf(flight.duration) }: DrawnFlight): string {
  const frames = calcFrames(flight, Float64Array.from(times));
  const side = sideView(flight.v_WScm_W0[0]);
  const rows: ((i: number) => View)[] = [() => side];
  if (twists(frames.twist)) rows.push((i) => overView(frames.somersault[i]));
  const inner = times.map((t, i) => {
    const pose = poseAt(flight, t);
    const x = WIDTH * (i + 0.5);
    const figures = rows.map((viewAt, row) => figureAt(flight.body, pose, viewAt(i), x, HEIGHT * (row + 0.5) + 18));
    return figures.join('') + text(x, 13, `${t.toFixed(2)} s`);
  });
  const label = `${title}: ${times.length} instants from take-off to touchdown`;
  return picture(WIDTH * times.length, HEIGHT * rows.length + 18, label, inner.join(''));
}

interface Posed {
  readonly R_WS: Float64Array;
  readonly p_WSo_W: Float64Array;
  readonly cm: readonly [number, number, number];
}

function poseAt(flight: Flight, t: number): Posed {
  const state = makeState(flight.body);
  readState(flight, t, state);
  const quat = new Float64Array(4);
  flight.quatInto(t, quat);
  const p = new Float64Array(3);
  const v = new Float64Array(3);
  flight.massCentreInto(t, p, v);
  return { ...calcPose(state.sm, quat, p), cm: [p[0], p[1], p[2]] };
}

const figureAt = (body: Body, { cm, ...frames }: Posed, view: View, x: number, y: number): string =>
  shorten(svgMarkup(figureItems(body, frames, { view, scale: SCALE, anchor: cm, x, y, gap: 'air', rough: true })));

/** A tenth of a pixel is enough. */
const shorten = (svg: string): string => svg.replace(/(\d\.\d)\d+/g, '$1');
