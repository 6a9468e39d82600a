/**
 * What a camera sees of a flight as CSV: a row for each picture it takes, the first at take-off. Places in px from the upper left corner of the
 * picture, y down; `_step_m`, `_step_px`, `_turn_deg` from this picture to the next by the speed at it. Columns: docs/filming.md.
 */
import { numberCell, originLines, type TableStyle } from '../files/table-style.ts';
import type { Flight } from '../flight/flight.ts';
import type { Triple } from '../math/vec3.ts';
import { calcPose } from '../motion/pose.ts';
import { makeState, readState } from '../motion/state.ts';
import { checkCamera, type FilmCamera, projectInto, type Stand, standCamera } from './camera.ts';
import { filmBody } from './filmed-body.ts';
import { calcFrameSteps } from './frame-steps.ts';
import { isHidden, soughtJoints } from './hidden-joints.ts';

const DEG = 180 / Math.PI;

/** In pieces of a row each, where it is from and the names first. `stand` of the plan, so that the camera is where the plan has it. */
export function* formatCameraCsv(
  flight: Flight,
  camera: FilmCamera,
  stand: Stand,
  style: TableStyle = {},
): Generator<string> {
  const s = standCamera(checkCamera(camera), stand);
  const n = Math.floor(flight.duration * camera.framesHz + 1e-9) + 1;
  const times = Float64Array.from({ length: n }, (_, i) => i / camera.framesHz);
  const reading = filmBody(flight, times);
  let read = reading.next();
  while (!read.done) read = reading.next();
  const filmed = read.value;
  const { parts, p_WP_W } = filmed;
  const steps = calcFrameSteps(filmed, camera, s);
  const joints = soughtJoints(flight.body);
  const names = [
    'picture',
    't_s',
    ...parts.flatMap((part) => ['x_px', 'y_px', 'step_m', 'step_px', 'turn_deg'].map((unit) => `${part}_${unit}`)),
    'blur_px',
    'skew_px',
    ...joints.flatMap(({ joint, side }) => ['x_px', 'y_px', 'hidden'].map((unit) => `${joint}${side}_${unit}`)),
  ];
  yield `${originLines(style)}${names.join(',')}\n`;
  const state = makeState(flight.body);
  const at = new Float64Array(2);
  for (let i = 0; i < n; i++) {
    readState(flight, times[i], state);
    const pose = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
    const cells: number[] = [i, times[i]];
    parts.forEach((_, k) => {
      const j = parts.length * i + k;
      projectInto(s, p_WP_W, 3 * j, at, 0);
      cells.push(at[0], at[1], steps.metres[j], steps.pixels[j], steps.degrees[j] * DEG);
    });
    cells.push(steps.blur[i], steps.skew[i]);
    for (const joint of joints) {
      projectInto(s, pose.p_WSo_W, 3 * joint.segment, at, 0);
      cells.push(at[0], at[1], isHidden(flight.body, pose, joint, s.p_WC_W as Triple) ? 1 : 0);
    }
    yield `${cells.map((x) => numberCell(x, style)).join(',')}\n`;
  }
}
