/** All legs of a chain on one time axis and in the frame of its first flight: phases, rows, poses, and what each leg reports. */
import { apparatusOfChain, type FlownChain, type FlownLeg, type WholeContact } from '../../../sim/index.ts';
import { makeLegResult } from './leg-result.ts';
import { PART, sampleColumns, samplePoses } from './leg-rows.ts';
import type { PhaseSpan, WholeColumns, WholePoses, WholeResult } from './whole-data.ts';

function phasesOf(
  { from, to, whole, course }: FlownLeg,
  leg: number,
  on: WholeResult['legs'][number]['contact'],
): PhaseSpan[] {
  const spans: PhaseSpan[] = [];
  if (whole.swing) spans.push({ kind: 'swing', leg, from: from + whole.from, to: from });
  else if (on)
    spans.push({ kind: 'contact', leg, from: from - (course?.spec.time ?? on.time), to: from, on: on.on, by: on.by });
  spans.push({ kind: 'flight', leg, from, to });
  if (whole.to > whole.flight.duration)
    spans.push({ kind: whole.landing ? 'landing' : 'swing', leg, from: to, to: from + whole.to });
  return spans;
}

type Columns = Record<keyof WholeColumns, Float64Array | Uint8Array>;

/** Columns of the same names under each other. */
function joinColumns(parts: readonly WholeColumns[]): WholeColumns {
  const joined: Partial<Columns> = {};
  for (const key of Object.keys(parts[0]) as (keyof WholeColumns)[]) {
    const n = parts.reduce((sum, part) => sum + part[key].length, 0);
    const out = key === 'phase' ? new Uint8Array(n) : new Float64Array(n);
    let at = 0;
    for (const part of parts) {
      out.set(part[key], at);
      at += part[key].length;
    }
    joined[key] = out;
  }
  return joined as WholeColumns;
}

function joinPoses(parts: readonly WholePoses[]): WholePoses {
  const join = (key: keyof WholePoses): Float64Array => {
    const out = new Float64Array(parts.reduce((sum, part) => sum + part[key].length, 0));
    let at = 0;
    for (const part of parts) {
      out.set(part[key], at);
      at += part[key].length;
    }
    return out;
  };
  return { t: join('t'), R_WS: join('R_WS'), p_WSo_W: join('p_WSo_W'), p_WScm_W: join('p_WScm_W'), R_WF: join('R_WF') };
}

type Placed = Pick<FlownLeg, 'offset_W' | 'facing'>;

/** Turned half round about the vertical where it faces the other way. */
const turned = (facing: 1 | -1, k: number): number => (k === 1 ? 1 : facing);

const moved = (places: Float64Array, { offset_W: by, facing }: Placed): Float64Array =>
  places.map((v, i) => turned(facing, i % 3) * v + by[i % 3]);

/** Of matrices by rows. */
const rotated = (matrices: Float64Array, { facing }: Placed): Float64Array =>
  facing === 1 ? matrices : matrices.map((v, i) => turned(facing, Math.floor((i % 9) / 3)) * v);

export function makeWholeResult({ legs: flown, from, to, stop }: FlownChain, room: WholeContact): WholeResult {
  const { body, gravity } = flown[0].whole.flight;
  const legs = flown.map((leg, k) => makeLegResult(leg, room, k === flown.length - 1));
  const phases: PhaseSpan[] = [];
  const columns: WholeColumns[] = [];
  const poses: WholePoses[] = [];
  flown.forEach((leg, k) => {
    const own = phasesOf(leg, k, legs[k].contact);
    const inAir = own.findIndex(({ kind }) => kind === 'flight');
    const c = sampleColumns(leg, room);
    const p = samplePoses(leg, room);
    const turn = (column: Float64Array): Float64Array => (leg.facing === 1 ? column : column.map((v) => -v));
    columns.push({
      ...c,
      t: c.t.map((t) => t + leg.from),
      fx: turn(c.fx),
      bendX: turn(c.bendX),
      h: turn(c.h),
      phase: c.phase.map(
        (part) => phases.length + (part === PART.before ? 0 : part === PART.flight ? inAir : own.length - 1),
      ),
    });
    poses.push({
      ...p,
      t: p.t.map((t) => t + leg.from),
      R_WS: rotated(p.R_WS, leg),
      R_WF: rotated(p.R_WF, leg),
      p_WSo_W: moved(p.p_WSo_W, leg),
      p_WScm_W: moved(p.p_WScm_W, leg),
    });
    phases.push(...own);
  });
  return {
    from,
    to,
    bodyWeight: body.mass * gravity,
    phases,
    legs,
    apparatus: apparatusOfChain({ legs: flown }),
    ...(stop ? { stop } : {}),
    columns: joinColumns(columns),
    poses: joinPoses(poses),
  };
}
