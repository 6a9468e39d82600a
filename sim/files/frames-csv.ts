/**
 * The frames of a flight as CSV: one row an instant, SI and radians, shortest decimals that read back to the same
 * number, an empty cell where nothing is defined. Every column: docs/frames.md. No caution in here: it is for machines.
 */
import type { Body } from '../body/body.ts';
import type { Frames } from '../measure/frames.ts';
import type { FrameWords } from '../measure/words.ts';
import { nameCell, numberCell, originLines, type TableStyle } from './table-style.ts';

interface Column {
  readonly name: string;
  readonly cell: (row: number) => string;
}

const XYZ = ['x', 'y', 'z'] as const;
const AXES_F = ['front_back', 'long', 'lateral'] as const;

/** Names of all columns, in order, as the first line of the CSV has them but for its quotes. No number is read. */
export function frameColumns(frames: Frames, body: Body, words: FrameWords): string[] {
  return makeColumns(frames, body, words).map((c) => c.name);
}

/** The CSV in pieces of some hundred rows: where it is from, if that is handed over, then the names. Lines end in "\n". */
export function* formatFrames(
  frames: Frames,
  body: Body,
  words: FrameWords,
  style: TableStyle = {},
): Generator<string> {
  const columns = makeColumns(frames, body, words, style);
  yield `${originLines(style)}${columns.map((c) => nameCell(c.name, style)).join(',')}\n`;
  const piece = 200;
  for (let start = 0; start < frames.n; start += piece) {
    let text = '';
    for (let i = start; i < Math.min(frames.n, start + piece); i++)
      text += `${columns.map((c) => c.cell(i)).join(',')}\n`;
    yield text;
  }
}

/** Of numbers alone without the words: the signs of the angles beside them say the same. */
function makeColumns(frames: Frames, body: Body, words: FrameWords, style: TableStyle = {}): Column[] {
  const show = (x: number): string => numberCell(x, style);
  const one = (name: string, data: Float64Array): Column => ({ name, cell: (i) => show(data[i]) });
  const of = (name: string, data: Float64Array, width: number, k: number): Column => ({
    name,
    cell: (i) => show(data[width * i + k]),
  });
  const several = (names: readonly string[], data: Float64Array): Column[] =>
    names.map((name, k) => of(name, data, names.length, k));
  const hinges = hingesInOrder(body);
  const nq = hinges.length;
  const na = body.angles.length;
  const ng = frames.groups.length;
  return [
    one('t', frames.t),
    ...several(['px', 'py', 'pz'], frames.p_WBo_W),
    ...several(['qw', 'qx', 'qy', 'qz'], frames.quat_WB),
    ...several(['vx', 'vy', 'vz'], frames.v_WBo_W),
    ...several(['wx', 'wy', 'wz'], frames.w_WB_B),
    ...hinges.flatMap(({ name, k }) => [of(`q_${name}`, frames.q, nq, k), of(`qd_${name}`, frames.qd, nq, k)]),
    ...several(['comx', 'comy', 'comz'], frames.p_WScm_W),
    ...several(['hx', 'hy', 'hz'], frames.h_Scm_W),
    ...hinges.map(({ name, k }) => of(`tau_${name}`, frames.tau, nq, k)),

    one('e_potential_J', frames.ePotential),
    one('e_rising_J', frames.eRising),
    one('e_along_J', frames.eAlong),
    one('e_rotation_J', frames.eRotation),
    one('e_limbs_J', frames.eLimbs),
    one('e_total_J', frames.eTotal),
    one('joint_power_W', frames.jointPower),
    one('joint_work_J', frames.jointWork),

    one('somersault_rad', frames.somersault),
    one('tilt_rad', frames.tilt),
    one('twist_rad', frames.twist),
    one('somersault_rate_rad_s', frames.somersaultRate),
    one('tilt_rate_rad_s', frames.tiltRate),
    one('twist_rate_rad_s', frames.twistRate),
    one('tilt_from_h_rad', frames.tiltFromH),
    ...(style.isNumeric
      ? []
      : (['somersault', 'tilt', 'twist'] as const).map((of) => ({
          name: `${of}_word`,
          cell: (i: number) => words[of][i],
        }))),

    ...several(['moment_lateral_kg_m2', 'moment_front_back_kg_m2', 'moment_long_kg_m2'], frames.moments),
    ...several(['principal_1_kg_m2', 'principal_2_kg_m2', 'principal_3_kg_m2'], frames.principal),
    ...several(['h_front_back_kg_m2_s', 'h_long_kg_m2_s', 'h_lateral_kg_m2_s'], frames.h_Scm_F),
    ...frames.groups.flatMap((group, g) =>
      XYZ.map((axis, k) => of(`h_${group}_${axis}_kg_m2_s`, frames.hGroups_W, 3 * ng, 3 * g + k)),
    ),
    ...frames.groups.flatMap((group, g) =>
      AXES_F.map((axis, k) => of(`h_${group}_${axis}_kg_m2_s`, frames.hGroups_F, 3 * ng, 3 * g + k)),
    ),
    ...several(['frame_qw', 'frame_qx', 'frame_qy', 'frame_qz'], frames.quat_WF),
    ...several(['frame_w_front_back_rad_s', 'frame_w_long_rad_s', 'frame_w_lateral_rad_s'], frames.w_WF_F),
    ...several(['body_wx_rad_s', 'body_wy_rad_s', 'body_wz_rad_s'], frames.w_S_W),
    ...several(['com_vx_m_s', 'com_vy_m_s', 'com_vz_m_s'], frames.v_WScm_W),
    one('pelvis_turn_rad', frames.pelvisTurn),
    one('shoulder_turn_rad', frames.shoulderTurn),
    ...body.angles.flatMap(({ name }, k) => [
      of(`angle_${name}_rad`, frames.angles, na, k),
      of(`angle_rate_${name}_rad_s`, frames.angleRates, na, k),
    ]),
  ];
}

/** Hinges in the order of the MJCF's joints (depth first), each with its index in the columns of the frames. */
function hingesInOrder(body: Body): { name: string; k: number }[] {
  const starts: number[] = [];
  let count = 0;
  for (const s of body.segments) {
    starts.push(count);
    count += s.hinges.length;
  }
  const visit = (i: number): { name: string; k: number }[] => [
    ...body.segments[i].hinges.map((h, j) => ({ name: h.name, k: starts[i] + j })),
    ...body.segments.flatMap((s, child) => (s.parent === i ? visit(child) : [])),
  ];
  return visit(0);
}
