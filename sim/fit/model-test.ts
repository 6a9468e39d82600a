/**
 * The test of the model: what was recorded is flown with the recorded joint angles from a start, and its somersault, tilt and twist are set
 * beside those that were measured. Both are of F, by the same angles.
 */
import type { Flight } from '../flight/flight.ts';
import type { ConditionedMotion } from '../recording/conditioned.ts';
import { fitParabola } from '../recording/parabola.ts';
import { flySkill } from '../skill/flyer.ts';
import { bodyFramesOf, courseOf } from './attitude-course.ts';
import { launchRecorded, readRows } from './recorded-flight.ts';
import type { AttitudeCourse, ModelTest, RecordedStart } from './recording-study.ts';

interface TestedModel {
  readonly test: ModelTest;
  readonly flight: Flight;
  /** of the flight, in the recording's place */
  readonly root: { readonly p_WBo_W: Float64Array; readonly quat_WB: Float64Array };
}

export function testModel(motion: ConditionedMotion, start: RecordedStart): TestedModel {
  const flight = flySkill(launchRecorded(motion, start));
  const { body } = motion.posed;
  const rows = readRows(flight, motion);
  const measured = courseOf(bodyFramesOf(body, motion.quat_WB, rows.angles));
  const computed = courseOf(bodyFramesOf(body, rows.quat_WB, rows.angles));
  const path = fitParabola(motion.t, motion.p_WScm_W, 0, motion.n - 1);
  const p_WBo_W = rows.p_WBo_W.map((v, i) => v + (i % 3 === 1 ? 0 : (path?.p[i % 3] ?? 0)));
  return {
    test: { measured, computed, ...differ(measured, computed) },
    flight,
    root: { p_WBo_W, quat_WB: rows.quat_WB },
  };
}

/** Where both are defined; a course that ends before the last row has no end. */
function differ(measured: AttitudeCourse, computed: AttitudeCourse): Pick<ModelTest, 'worst' | 'atEnd'> {
  const off = (name: keyof AttitudeCourse): Float64Array => computed[name].map((v, i) => v - measured[name][i]);
  const [s, k, w] = [off('somersault'), off('tilt'), off('twist')];
  const worst = (x: Float64Array): number =>
    x.reduce((most, v) => (Number.isNaN(v) ? most : Math.max(most, Math.abs(v))), 0);
  const end = s.length - 1;
  return { worst: [worst(s), worst(k), worst(w)], atEnd: [s[end], k[end], w[end]] };
}
