/** Joins the rooms for whole skills: what the worker computed, as pictures. */

import type { FlightResult } from '../engine/result.ts';
import type { PhaseSpan, WholeResult } from '../jobs/kinds/whole-data.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import type { StagePose } from '../scene/pose-frames.ts';
import { type OtherPath, type SideForce, sideBehind, sideExtent, sideItems, sideStill } from '../scene/whole-side.ts';
import { poseNear, reachOf, type StageTouch, viewOf, type WholeStage } from '../scene/whole-stage.ts';
import { unrolledNow, unrolledStill } from '../scene/whole-time.ts';
import type { WholeOther, WholePictureInput, WholePictures, WholeSideInput } from './whole-input.ts';

const staged = new WeakMap<WholeResult, WholeStage>();

function getStage(whole: WholeResult, { flight }: FlightResult): WholeStage {
  const known = staged.get(whole);
  if (known) return known;
  const { poses: p, legs, phases } = whole;
  const segments = flight.body.segments.length;
  const poses: StagePose[] = Array.from(p.t, (t, i) => ({
    t,
    frames: {
      R_WS: p.R_WS.subarray(9 * segments * i, 9 * segments * (i + 1)),
      p_WSo_W: p.p_WSo_W.subarray(3 * segments * i, 3 * segments * (i + 1)),
    },
    p_WScm_W: [p.p_WScm_W[3 * i], p.p_WScm_W[3 * i + 1], p.p_WScm_W[3 * i + 2]],
    R_WF: p.R_WF.subarray(9 * i, 9 * (i + 1)),
    somersault: Number.NaN,
    tilt: Number.NaN,
    twist: Number.NaN,
  }));
  // the way that most of it goes
  const vx = legs.reduce((most, leg) => (Math.abs(leg.vx) > Math.abs(most) ? leg.vx : most), 0);
  const made: WholeStage = {
    body: flight.body,
    poses,
    phases,
    view: viewOf(vx),
    pieces: whole.apparatus.pieces,
    touches: touchesOf(whole),
  };
  staged.set(whole, made);
  return made;
}

/** What is on the apparatus from when to when: hands on a rail, hands or feet in a contact, feet in a landing; else the moment that it is left or met. */
function touchesOf({ apparatus, legs, columns: c, phases }: WholeResult): StageTouch[] {
  const rows = (leg: number, isOf: (phase: PhaseSpan) => boolean): number[] =>
    Array.from(c.t.keys()).filter((i) => {
      const phase = phases[c.phase[i]];
      return phase.leg === leg && phase.kind !== 'flight' && isOf(phase);
    });
  const touch = (piece: number, at: number, is: readonly number[], isRail = false): StageTouch => ({
    piece,
    from: is.length > 0 ? c.t[is[0]] : at,
    to: is.length > 0 ? c.t[is[is.length - 1]] : at,
    t: is.map((i) => c.t[i]),
    along: is.map((i) => (isRail ? c.bendX[i] : 0)),
    up: is.map((i) => (isRail ? c.bendY[i] : -c.sink[i])),
  });
  return legs.flatMap(({ takeoff, touchdown }, k): StageTouch[] => {
    const { leaves, lands } = apparatus.legs[k];
    const isRail = leaves !== undefined && apparatus.pieces[leaves].kind === 'rail';
    const isLast = k === legs.length - 1;
    return [
      ...(leaves === undefined
        ? []
        : [
            touch(
              leaves,
              takeoff,
              rows(k, ({ to }) => to <= takeoff + 1e-9),
              isRail,
            ),
          ]),
      ...(lands === undefined || !isLast
        ? []
        : [
            touch(
              lands,
              touchdown,
              rows(k, ({ from }) => from >= touchdown - 1e-9),
              apparatus.pieces[lands].kind === 'rail',
            ),
          ]),
    ];
  });
}

const timeWindow = (input: WholePictureInput) => ({ ...input, marks: input.units.lengthMarks });

function forceAt(stage: WholeStage, whole: WholeResult, { row, t, words }: WholeSideInput): SideForce | undefined {
  const { columns: c, phases, bodyWeight } = whole;
  const phase = phases[c.phase[row]];
  if (!phase || phase.kind === 'flight') return undefined;
  const pose = poseNear(stage.poses, t);
  const at: readonly [number, number] =
    phase.kind === 'swing'
      ? limbAt(stage, pose, 'hand')
      : limbAt(stage, pose, phase.kind === 'contact' && phase.by === 'hands' ? 'hand' : 'foot');
  return { x: c.fx[row] / bodyWeight, y: c.fy[row] / bodyWeight, at, size: words.size, words: words.force };
}

/** Middle of both hands or feet; the mass centre's foot where the body has none. */
function limbAt({ body }: WholeStage, pose: StagePose, limb: 'hand' | 'foot'): readonly [number, number] {
  const found = body.segments.flatMap(({ name }, i) => (name.toLowerCase().startsWith(limb) ? [i] : []));
  if (found.length === 0) return [pose.p_WScm_W[0], 0];
  const mean = (k: number): number => found.reduce((sum, i) => sum + pose.frames.p_WSo_W[3 * i + k], 0) / found.length;
  return [mean(0), Math.max(0, mean(1) - 0.06)];
}

const otherOf = ({ legs }: WholeResult, { leg, path, isEarly, name, outcome, isStop }: WholeOther): OtherPath => {
  const { barX, offset } = legs[leg];
  const x = barX + offset[0];
  return {
    points: Array.from(path, (v, i) => (i % 2 === 0 ? v + x : v)),
    dash: isEarly ? [6, 4] : [1.5, 3],
    name,
    outcome,
    isStop,
  };
};

export const wholePictures: WholePictures = {
  reaches: (whole, result) => {
    const stage = getStage(whole, result);
    return stage.poses.map((pose) => ({ t: pose.t, ...reachOf(stage, pose) }));
  },
  still: (whole, result, input) => svgMarkup(unrolledStill(getStage(whole, result), timeWindow(input))),
  now: (whole, result, input, t) => svgMarkup(unrolledNow(getStage(whole, result), timeWindow(input), t)),
  extent: (whole, result) => {
    const stage = getStage(whole, result);
    const [from, to] = sideExtent(stage);
    return { from, to, way: stage.view.right[0] < 0 ? -1 : 1 };
  },
  sideStill: (whole, result, input) => svgMarkup(sideStill(getStage(whole, result), input)),
  side: (whole, result, input) => {
    const stage = getStage(whole, result);
    const force = forceAt(stage, whole, input);
    const near = input.near && nearOf(whole, input.near);
    const front = svgMarkup(
      sideItems(stage, input, input.t, {
        ...(force ? { force } : {}),
        ownWeight: input.words.ownWeight,
        others: input.others.map((one) => otherOf(whole, one)),
        ...(near ? { near } : {}),
      }),
    );
    return [svgMarkup(sideBehind(stage, input, input.t)), front];
  },
};

function nearOf({ legs }: WholeResult, { leg, lines }: NonNullable<WholeSideInput['near']>) {
  const { swing, barX, offset, nearest, takeoff } = legs[leg];
  if (!swing || !nearest || nearest.solid !== 'rail') return undefined;
  return { x: barX + offset[0], y: swing.rail.height, t: takeoff + nearest.t, lines };
}
