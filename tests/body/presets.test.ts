/** The athletes and shapes that come with the project: they parse, name real angles, and keep the hands outside the body. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Body } from '../../sim/body/body.ts';
import { makeHuman } from '../../sim/body/human.ts';
import { inSi } from '../../sim/files/athlete-si.ts';
import { parseAthlete } from '../../sim/files/parse-athlete.ts';
import type { ShapeData } from '../../sim/files/schedule-schema.ts';
import { calcShapeMoments } from '../../sim/measure/shape-moments.ts';
import { calcBodyFrame } from '../../sim/motion/body-frame.ts';
import { makeHeld } from '../../sim/motion/held.ts';
import { namedMoments, wholeBody } from './moments.ts';
import { deepestOverlap } from './overlap.ts';

const root = new URL('../../presets/', import.meta.url);
const shapes = JSON.parse(readFileSync(new URL('shapes.json', root), 'utf8')) as Record<string, ShapeData>;
const athletes = readdirSync(new URL('athletes/', root)).map((file) => {
  const spec = inSi(parseAthlete(JSON.parse(readFileSync(new URL(`athletes/${file}`, root), 'utf8'))));
  if (spec.kind !== 'human') throw new Error(`${file} is no human`);
  return { file, spec: spec.human, body: makeHuman(spec.human) };
});
/** Drawn flesh gives way where arms rest on the body, m; measured at worst 4 mm, arms wrapped */
const SOFT = 0.008;

test('at least four athletes, women and men, weigh what they say', () => {
  expect(athletes.length).toBeGreaterThanOrEqual(4);
  for (const { spec, body } of athletes) expect(Math.abs(body.mass / spec.mass - 1)).toBeLessThan(1e-3);
});

/** Where the mass centre of a pose lies in the athlete, as a share of stature below the vertex. */
const centreBelowVertex = (body: Body): number =>
  1 - (wholeBody(body, {}).centre[1] + (body.standingRootHeight ?? 0)) / (body.stature ?? 1);
test('the children have bigger heads and lighter thighs than the adults, and a higher mass centre', () => {
  const share = (file: string, name: string): number => {
    const { body } = athletes.find((a) => a.file === file) ?? athletes[0];
    return (body.segments.find((s) => s.name === name)?.mass ?? 0) / body.mass;
  };
  expect(share('nell-oakum.json', 'head')).toBeGreaterThan(1.5 * share('ilse-marrow.json', 'head'));
  expect(share('nell-oakum.json', 'thighL')).toBeLessThan(0.8 * share('ilse-marrow.json', 'thighL'));
  const [girl, woman] = ['nell-oakum.json', 'ilse-marrow.json'].map(
    (f) => athletes.find((a) => a.file === f) ?? athletes[0],
  );
  expect(centreBelowVertex(girl.body)).toBeLessThan(centreBelowVertex(woman.body));
});

test('the children state their age, and have the masses that it gives, to 0.1 kg', () => {
  const children = athletes.filter(({ spec }) => spec.age !== undefined);
  expect(children.map(({ spec }) => spec.age)).toEqual([14, 11]);
  for (const { spec, body } of children) {
    const byAge = makeHuman({ ...spec, overrides: {} });
    body.segments.forEach((s, i) => {
      // measured 0.09 kg, the girl's head
      expect(Math.abs(s.mass - byAge.segments[i].mass), s.name).toBeLessThan(0.1);
    });
    const { age: _, ...grown } = spec;
    expect(makeHuman(grown).segments).toEqual(body.segments);
  }
});

const inRadians = (body: Body, deg: Readonly<Record<string, number>>): number[] =>
  body.angles.map((a) => ((deg[a.name] ?? deg[a.name.replace(/[LR]$/, '')] ?? 0) * Math.PI) / 180);

describe.each(Object.entries(shapes))('%s', (id, shape) => {
  test('has a title, a short word and angles of the human', () => {
    expect(shape.title.length).toBeGreaterThan(0);
    expect(shape.word.length).toBeLessThanOrEqual(12);
    const { angles } = athletes[0].body;
    for (const name of Object.keys(shape.angles))
      expect(
        angles.some((a) => a.name === name || a.name === `${name}L`),
        `${id}: ${name}`,
      ).toBe(true);
  });
  test.each(athletes)('keeps forearms and hands of $file outside the body', ({ body }) => {
    const { depth, where } = deepestOverlap(body, wholeBody(body, shape.angles));
    expect(depth, where).toBeLessThan(SOFT);
  });
  test('stays in the ranges of motion, so that it never warns by itself', () => {
    const { angles } = athletes[0].body;
    for (const a of angles) {
      const deg = shape.angles[a.name] ?? shape.angles[a.name.replace(/[LR]$/, '')] ?? 0;
      expect(deg * (Math.PI / 180), a.name).toBeGreaterThanOrEqual(a.range[0] - 1e-12);
      expect(deg * (Math.PI / 180), a.name).toBeLessThanOrEqual(a.range[1] + 1e-12);
    }
  });
});

test('landing: feet flat within 5 deg while F is upright, the mass centre over the feet', () => {
  // measured: women and girl -1.0 to 1.1 deg, men and boy toes 3.7 to 4.2 deg down; 2.5 to 6.9 cm ahead of the ankles
  for (const { body, file } of athletes) {
    const pose = inRadians(body, shapes.landing.angles);
    const sm = makeHeld(body, pose);
    const { R_BF } = calcBodyFrame(sm);
    const whole = wholeBody(body, shapes.landing.angles);
    const inF = (v_B: readonly number[]): number[] =>
      [0, 1, 2].map((c) => R_BF[c] * v_B[0] + R_BF[3 + c] * v_B[1] + R_BF[6 + c] * v_B[2]);
    const foot = body.segments.findIndex((s) => s.name === 'footR');
    const toe = inF(whole.turns[foot].map((row) => row[0])); // its heel-toe axis
    expect(Math.abs(toe[1]), file).toBeLessThan(Math.sin((5 * Math.PI) / 180));
    const ahead = inF(whole.centre.map((x, i) => x - whole.origins[foot][i]))[0];
    const heel = body.contacts.find((c) => c.name === 'heelR');
    const ball = body.contacts.find((c) => c.name === 'ballR');
    expect(ahead, file).toBeGreaterThan(heel?.p_BoC_B[0] ?? 0);
    expect(ahead, file).toBeLessThan(ball?.p_BoC_B[0] ?? 0);
  }
});

/** kg m2: lateral, front-back and long moment of a woman (54 kg, 1.62 m), then of a man (73 kg, 1.741 m); docs/body.md prints them. */
// biome-ignore format: a table
const MOMENTS: Readonly<Record<string, readonly number[]>> = {
  straight: [7.17, 7.56, 0.56, 11.31, 12.01, 0.98],
  armsOverhead: [9.05, 9.42, 0.54, 14.72, 15.38, 0.94],
  tShape: [7.67, 8.96, 1.45, 12.25, 14.56, 2.58],
  armsDownWide: [7.23, 8.15, 1.09, 11.43, 13.08, 1.93],
  armsForward: [8.11, 8.04, 0.97, 13.01, 12.91, 1.70],
  star: [7.65, 9.75, 2.26, 12.31, 15.98, 3.94],
  oneUpOneDown: [8.14, 8.52, 0.55, 13.07, 13.75, 0.96],
  oneDownOneUp: [8.14, 8.52, 0.55, 13.07, 13.75, 0.96],
  wrapped: [7.38, 7.64, 0.53, 11.72, 12.18, 0.92],
  wrappedLeft: [7.29, 7.60, 0.58, 11.55, 12.10, 1.00],
  wrappedRight: [7.29, 7.60, 0.58, 11.55, 12.10, 1.00],
  tuck: [2.69, 2.39, 1.40, 3.82, 3.32, 2.44],
  openTuck: [3.96, 3.71, 1.35, 5.90, 5.54, 2.32],
  pike: [3.35, 1.61, 2.81, 5.11, 2.61, 4.39],
  divePike: [3.20, 0.81, 3.32, 5.03, 1.53, 5.14],
  openPike: [4.58, 4.02, 2.94, 7.09, 6.48, 4.85],
  straddle: [3.09, 4.48, 4.35, 4.61, 7.18, 7.39],
  hollow: [8.62, 8.68, 0.84, 13.98, 14.09, 1.48],
  arch: [8.62, 8.69, 0.84, 13.99, 14.12, 1.46],
  split: [6.88, 6.34, 3.28, 11.04, 10.16, 5.77],
  kneesBent: [5.10, 5.25, 1.17, 8.06, 8.45, 1.96],
  handstand: [9.00, 9.37, 0.54, 14.63, 15.29, 0.94],
  diveEntry: [9.01, 9.34, 0.50, 14.65, 15.23, 0.87],
  landing: [6.26, 6.11, 1.34, 9.78, 9.56, 2.34],
  ready: [7.13, 7.65, 0.69, 11.21, 12.12, 1.21],
};
/** half a unit of the last digit given */
const PRINTED = 0.005;

test.each(Object.entries(shapes))('the moments of %s are those in the table', (id, shape) => {
  const bodies = [
    makeHuman({ name: 'woman', sex: 'female', mass: 54, stature: 1.62 }),
    makeHuman({ name: 'man', sex: 'male', mass: 73, stature: 1.741 }),
  ];
  const own = bodies.flatMap((body) => {
    const { lateral, frontBack, long } = calcShapeMoments(body, inRadians(body, shape.angles));
    return [lateral, frontBack, long];
  });
  expect(MOMENTS[id]).toHaveLength(own.length);
  own.forEach((x, i) => {
    expect(Math.abs(x - MOMENTS[id][i])).toBeLessThanOrEqual(PRINTED);
  });
});

test('one up, one down and its mirror have the mirrored tensor', () => {
  const { body } = athletes[0];
  const [a, b] = ['oneUpOneDown', 'oneDownOneUp'].map((id) => wholeBody(body, shapes[id].angles));
  expect(Math.abs(a.inertia[1][2])).toBeGreaterThan(0.05);
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++)
      expect(b.inertia[i][j]).toBeCloseTo((i === 2 ? -1 : 1) * (j === 2 ? -1 : 1) * a.inertia[i][j], 12);
});

test('lateral moments fall from overhead over straight and pike to tuck; wrapped arms twist more easily than any others', () => {
  const { body } = athletes[0];
  const of = (id: string) => namedMoments(wholeBody(body, shapes[id].angles));
  const order = ['armsOverhead', 'straight', 'openPike', 'pike', 'tuck'].map((id) => of(id).A);
  expect([...order].sort((a, b) => b - a)).toEqual(order);
  expect(of('wrapped').C).toBeLessThan(of('straight').C);
  expect(of('wrapped').C).toBeLessThan(0.5 * of('tShape').C);
});
