/** Any tree as a body: what is taken and what is refused. */
import { describe, expect, test } from 'vitest';
import { makeTree, type TreeSegmentSpec, type TreeSpec } from '../../sim/body/tree.ts';
import { FieldError } from '../../sim/math/field-error.ts';
import { part as partOf } from '../checks/flown.ts';

const part = (name: string, { inertia = [0.1, 0.1, 0.1, 0, 0, 0], mass = 1, ...more }: Partial<TreeSegmentSpec> = {}) =>
  partOf(name, mass, inertia, more);
const fieldOf = (segments: TreeSegmentSpec[], framePoints?: TreeSpec['framePoints']): string => {
  try {
    makeTree({ name: 't', segments, ...(framePoints ? { framePoints } : {}) });
  } catch (error) {
    if (error instanceof FieldError) return error.field;
    throw error;
  }
  return 'taken';
};
const hinge = (name: string, more = {}) => ({ name, axis: [0, 0, 1] as const, ...more });

describe('a tree', () => {
  test('one segment is a body', () => {
    const body = makeTree({ name: 'block', segments: [part('block')] });
    expect([body.mass, body.segments[0].parent, body.angles.length, body.neutralHuman]).toEqual([1, -1, 0, false]);
  });
  test('a rod and a point are possible segments', () => {
    expect(
      fieldOf([
        part('rod', { inertia: [0.1, 0, 0.1, 0, 0, 0] }),
        part('point', { parent: 'rod', inertia: [0, 0, 0, 0, 0, 0] }),
      ]),
    ).toBe('taken');
  });
  test('a skew rod is taken, though rounding makes its least moment a little negative', () => {
    const e = [0.6, 0.48, 0.64];
    const at = (i: number, j: number): number => 0.3 * ((i === j ? 1 : 0) - e[i] * e[j]);
    expect(fieldOf([part('rod', { inertia: [at(0, 0), at(1, 1), at(2, 2), at(0, 1), at(0, 2), at(1, 2)] })])).toBe(
      'taken',
    );
  });
  test('mirrors pair up when one of the two names the other', () => {
    const body = makeTree({
      name: 't',
      segments: [
        part('hub'),
        part('l', { parent: 'hub', hinges: [hinge('hingeL', { mirror: 'hingeR', mirrorSign: -1 })] }),
        part('r', { parent: 'hub', hinges: [hinge('hingeR')] }),
      ],
    });
    expect(body.angles.map((a) => [a.mirror, a.mirrorSign])).toEqual([
      [1, -1],
      [0, -1],
    ]);
  });
  test.each<[string, TreeSegmentSpec[]]>([
    ['athlete.segments', []],
    ['athlete.segments[0].massKg', [part('a', { mass: 0 })]],
    ['athlete.segments[0].massKg', [part('a', { mass: Number.NaN })]],
    ['athlete.segments[0].parent', [part('a', { parent: 'b' })]],
    ['athlete.segments[1].parent', [part('a'), part('b', { parent: 'c' }), part('c', { parent: 'a' })]],
    ['athlete.segments[1].parent', [part('a'), part('b')]],
    ['athlete.segments[1].name', [part('a'), part('a', { parent: 'a' })]],
    ['athlete.segments[1].name', [part('a'), part('world', { parent: 'a' })]],
    ['athlete.segments[0].hinges', [part('a', { hinges: [hinge('h')] })]],
    ['athlete.segments[1].hinges[1].name', [part('a'), part('b', { parent: 'a', hinges: [hinge('h'), hinge('h')] })]],
    [
      'athlete.segments[1].hinges[0].axis',
      [part('a'), part('b', { parent: 'a', hinges: [{ name: 'h', axis: [0, 0, 2] }] })],
    ],
    [
      'athlete.segments[1].hinges[0].mirror',
      [part('a'), part('b', { parent: 'a', hinges: [hinge('h', { mirror: 'k' })] })],
    ],
    ['athlete.segments[1].hinges[0].name', [part('a'), part('b', { parent: 'a', hinges: [hinge('root')] })]],
    ['athlete.segments[0].inertiaKgM2', [part('a', { inertia: [0.1, 0.1, 0.21, 0, 0, 0] })]],
    ['athlete.segments[0].inertiaKgM2', [part('a', { inertia: [0.1, 0.1, 0.1, 0.12, 0, 0] })]],
    [
      'athlete.segments[0].contacts[0].radiusM',
      [part('a', { contacts: [{ name: 'c', part: 'feet', point: [0, 0, 0], radius: -1 }] })],
    ],
  ])('%s is named when it is at fault', (field, segments) => {
    expect(fieldOf(segments)).toBe(field);
  });
  test('frame points need an upper group and legs on both sides', () => {
    const at = { segment: 'a', point: [0, 0, 0] as const };
    expect(fieldOf([part('a')], { hipL: at, hipR: at, shoulderL: at, shoulderR: at })).toBe('athlete.framePoints');
  });
});
