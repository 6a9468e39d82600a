// A contact as a course in time, against closed forms: projectile and constant force, a half sine, a lever; both ends joined smoothly; faults that fire and that do not.
import { describe, expect, test } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { type ContactCourse, type CourseEntry, calcContactCourse } from '../../sim/skill/contact-course.ts';
import type { CourseSpec } from '../../sim/skill/contact-rows.ts';
import { flyWhole } from '../../sim/skill/whole.ts';
import { builtOf, fileOf } from './load.ts';

const flightOf = (id: string) => flyWhole(builtOf(fileOf(id)), contact).flight;
const courseOf = (before: CourseEntry, spec: Partial<CourseSpec> = {}, id = 'floor-double-tuck'): ContactCourse => {
  const after = flightOf(id);
  const whole: CourseSpec = { place: 'floor', by: 'feet', time: 0.12, friction: 0.8, ...spec };
  const course = calcContactCourse({ spec: whole, before, after });
  if (!course) throw new Error('no course');
  return course;
};
const coming = (v: readonly [number, number, number], h: readonly [number, number, number]): CourseEntry => ({
  kind: 'assumed',
  v_WScm_W: v,
  h_Scm_W: h,
});

describe('the mass centre by the force alone', () => {
  const { v_WScm_W0: v1, h_Scm_W: h1 } = flightOf('floor-double-tuck');
  test('a flat pulse is a projectile under a constant force: T (v0 + v1) / 2', () => {
    const c = courseOf(coming([-4, -0.7, 0.2], h1), { pulse: 'flat' });
    [-4, -0.7, 0.2].forEach((v0, k) => {
      expect(c.moved_W[k]).toBeCloseTo((0.12 * (v0 + v1[k])) / 2, 12);
    });
  });

  test('a half sine goes as far as a constant force, a late one less far, an early one farther', () => {
    const [half, flat, early, late] = (['halfSine', 'flat', 'early', 'late'] as const).map(
      (pulse) => courseOf(coming([-4, -0.7, 0], h1), { pulse }).moved_W[1],
    );
    expect(half).toBeCloseTo(flat, 12);
    // J T / m times 1/10: the middle of s^2 (1 - s) and of its mirror, 3/5 and 2/5, less one half
    const J = v1[1] + 0.7 + 9.81 * 0.12;
    expect(early - flat).toBeCloseTo(0.1 * J * 0.12, 12);
    expect(flat - late).toBeCloseTo(0.1 * J * 0.12, 12);
  });
});

/** of their scale; measured: 2e-8 and 1.2e-7 */
const CLOSES = 1e-6;
test('the account over time closes on the two flights', () => {
  for (const id of ['floor-double-tuck', 'vault-handspring-half', 'trampoline-double-tuck']) {
    const { misses } = courseOf(coming([-4, -1, 0.1], [3, -2, 30]), {}, id).account;
    expect(misses.energy).toBeLessThan(CLOSES);
    expect(misses.momentum).toBeLessThan(CLOSES);
  }
});

test('a course begins and ends with the speed and momentum of its neighbours', () => {
  const after = flightOf('floor-double-tuck');
  const c = courseOf(coming([-4, -0.7, 0], [0, 0, 28]));
  const [first, last] = [c.stateAt(0), c.stateAt(0.12)];
  for (let k = 0; k < 3; k++) {
    expect(first.v_WScm_W[k]).toBeCloseTo([-4, -0.7, 0][k], 12);
    expect(last.v_WScm_W[k]).toBeCloseTo(after.v_WScm_W0[k], 12);
    expect(first.h_Scm_W[k]).toBeCloseTo([0, 0, 28][k], 6);
    expect(last.h_Scm_W[k]).toBeCloseTo(after.h_Scm_W[k], 6);
    expect(last.p_WScm_W[k]).toBeCloseTo(after.p_WScm_W0[k], 12);
  }
});
