// One launch: every reader of a skill flies from the same state, as stored and with what comes before the flight changed.
// With SHAPEFLIGHT_WHOLE=1 every preset with every athlete; else a fixed sample with every kind of start in it.
import { describe, expect, it } from 'vitest';
import { athletes } from '../../presets/index.ts';
import * as contact from '../../sim/contact/index.ts';
import {
  buildSkill,
  calcFlightEnd,
  calcFrames,
  calcRelease,
  calcSkillReadings,
  calcTiltAccount,
  compareSkills,
  Evaluator,
  type Flight,
  findInput,
  flySkill,
  flyWhole,
  launch,
  launchFrom,
  listInputs,
  openMap,
  openStudy,
  putInputs,
  type SkillSpec,
  StudyRunner,
  usualStudy,
} from '../../sim/index.ts';
import { Mapper } from '../../sim/search/map.ts';
import { Sampler } from '../../sim/search/sample.ts';
import { SampleFlyer } from '../../sim/search/sample-fly.ts';
import { isWhole } from '../corpus.ts';
import { fileOf, presetIds, specOf } from '../skill/load.ts';

const REV = 2 * Math.PI;
/** rev, s, m, rad at equal tolerance; measured 0 */
const SAME = 1e-9;
/** rev and s at the tolerance of studies (docs/margin.md); measured 6.1e-8 and 2.3e-9 over all presets and athletes when studies were at 3e-9; they are at 3e-10 */
const STUDY = { rev: 2.2e-7, s: 1.3e-8 };

/** A map whose first place is the skill as it is. */
function mapOf(spec: SkillSpec): Mapper {
  const [x, y] = listInputs(spec).map(({ id, value, range, scale }) => ({
    input: id,
    from: value,
    to: value + scale <= range[1] ? value + scale : value - scale,
    count: 2,
  }));
  return new Mapper(
    openMap({ spec, x, y, results: ['airTime', 'somersaults', 'twists', 'tilt'], window: [] }, contact),
  );
}

/** What flies a skill, by who reads it. */
const READERS: Readonly<Record<string, (spec: SkillSpec) => Flight>> = {
  'fly, sheet': (spec) => flyWhole(buildSkill(spec), contact).flight,
  solve: (spec) => new Evaluator(spec, [], { contact }).flightAt([]),
  margin: (spec) => new Sampler(openStudy(usualStudy(spec, 1, contact), contact)).flyer.now,
  map: (spec) => mapOf(spec).flyer.now,
  compare: (spec) => compareSkills([launch(buildSkill(spec), contact)]).versions[0].flight,
  readouts: (spec) => calcSkillReadings(launch(buildSkill(spec), contact), {}).flight,
  // the page has the release from a worker, as plain data
  page: (spec) => {
    const skill = buildSkill(spec);
    const { swing: _, ...release } = calcRelease(skill, contact);
    return flySkill(launchFrom(skill, structuredClone(release)));
  },
};

/** Place, velocity, momentum, attitude, joint angles and rates at t = 0, bit for bit. */
function stateOf(flight: Flight): Float64Array {
  const n = flight.body.angles.length;
  const [angles, rates, quat] = [new Float64Array(n), new Float64Array(n), new Float64Array(4)];
  flight.schedule.anglesInto(0, angles, rates);
  flight.quatInto(0, quat);
  return Float64Array.from([...flight.p_WScm_W0, ...flight.v_WScm_W0, ...flight.h_Scm_W, ...quat, ...angles, ...rates]);
}

function resultsOf(flight: Flight): number[] {
  const end = calcFlightEnd(flight);
  return [flight.duration, end.somersault / REV, end.twist / REV, end.tilt / REV];
}

/** A little of whatever gives the launch, as far as the skill has it. */
const CHANGES: Readonly<Record<string, number>> = {
  'swing.releaseAngle': 0.05,
  'swing.late': 0.01,
  'swing.lateHand': 0.004,
  'contact.force': 0.1,
  'contact.lean': 0.02,
  'takeoff.h.z': 0.5,
};

function variantsOf(id: string, athlete: string | undefined): [string, SkillSpec][] {
  const file = fileOf(id);
  const spec = specOf(athlete === undefined ? file : { ...file, athlete: { ref: athlete } });
  const has = new Set(listInputs(spec).map((i) => i.id));
  return [
    ['as stored', spec],
    ...Object.entries(CHANGES).flatMap(([input, by]): [string, SkillSpec][] => {
      if (!has.has(input)) return [];
      const found = findInput(spec, input);
      return [[`${input} changed`, putInputs(spec, [found], [found.value + by])]];
    }),
  ];
}

const attempt = (fly: (spec: SkillSpec) => Flight, spec: SkillSpec): Flight | string => {
  try {
    return fly(spec);
  } catch (error) {
    return `${(error as Error).name}: ${(error as Error).message}`;
  }
};

/** Stated to a duration, to a touchdown head first and before a landing; a swing with a late hand and a contact with another athlete. */
const SAMPLE: readonly (readonly [string, ...(string | undefined)[]])[] = [
  ['cat-turn', undefined],
  ['dive-forward-one-and-half-pike', undefined],
  ['floor-double-tuck', undefined],
  ['giant-late-hand-full', 'ilse-marrow'],
  ['vault-handspring-half', 'tobias-fenn'],
];
const pairs: readonly (readonly [string, string | undefined])[] = isWhole
  ? presetIds.flatMap((id) => [undefined, ...Object.keys(athletes)].map((a) => [id, a] as const))
  : SAMPLE.flatMap(([id, ...who]) => who.map((a) => [id, a] as const));

describe('one launch', () => {
  it.each(pairs.map(([id, a]) => [id, a ?? 'its own athlete', a] as const))(
    '%s with %s: every reader flies from the same state, to the same end',
    (id, _, athlete) => {
      for (const [what, spec] of variantsOf(id, athlete)) {
        const [first, ...others] = Object.entries(READERS).map(([name, fly]) => [name, attempt(fly, spec)] as const);
        // a law about what all refuse would be empty
        if (!isWhole || athlete === undefined) expect(first[1], what).not.toBeTypeOf('string');
        for (const [name, flight] of others) {
          if (typeof flight === 'string' || typeof first[1] === 'string') {
            expect(flight, `${what}, ${name}`).toEqual(first[1]);
            continue;
          }
          expect(stateOf(flight), `${what}, ${name}`).toEqual(stateOf(first[1]));
          resultsOf(flight).forEach((x, k) => {
            const y = resultsOf(first[1] as Flight)[k];
            if (!Number.isNaN(y)) expect(Math.abs(x - y), `${what}, ${name}`).toBeLessThanOrEqual(SAME);
          });
        }
        if (typeof first[1] === 'string') continue;
        const study = new SampleFlyer(spec, [], { contact }).flightAt([]);
        expect(stateOf(study), `${what}, a study`).toEqual(stateOf(first[1]));
        const [T, ...turns] = resultsOf(study).map((x, k) => Math.abs(x - resultsOf(first[1] as Flight)[k]));
        expect(T, what).toBeLessThan(STUDY.s);
        for (const turn of turns) if (!Number.isNaN(turn)) expect(turn, what).toBeLessThan(STUDY.rev);
        const { values } = mapOf(spec).run(0);
        const end = calcFlightEnd(first[1]);
        const from = calcFrames(first[1], [0]);
        const sizes = (list: readonly number[]): number[] => list.map(Math.abs);
        // somersault and twist as done since the take-off, and without a sign
        const [air, ...reached] = sizes([values[0], values[2], values[4], values[6] / REV]);
        expect(Math.abs(air - first[1].duration), `${what}, map`).toBeLessThan(STUDY.s);
        sizes([(end.somersault - from.somersault[0]) / REV, (end.twist - from.twist[0]) / REV, end.tilt / REV]).forEach(
          (turn, k) => {
            if (!Number.isNaN(turn)) expect(Math.abs(reached[k] - turn), `${what}, map`).toBeLessThan(STUDY.rev);
          },
        );
      }
    },
  );

  it.each(isWhole ? presetIds : SAMPLE.map(([id]) => id))(
    '%s: the account of the tilt is that of the flight, whatever comes before it',
    (id) => {
      for (const [what, spec] of variantsOf(id, undefined)) {
        const skill = launch(buildSkill(spec), contact);
        const flight = flySkill(skill);
        const account = calcTiltAccount(skill);
        expect(account, what).toEqual(calcTiltAccount(skill, { flight }));
        const twist = calcFlightEnd(flight).twist - calcFrames(flight, [0]).twist[0];
        if (!Number.isNaN(twist)) expect(Math.abs(account.total.twist - twist), what).toBeLessThanOrEqual(SAME);
      }
    },
  );

  it.each([
    ['a release that is never reached', 'giant-double-straight', 'swing.releaseAngle', 60],
    ['a surface that is never reached', 'back-tuck', 'end.surfaceHeight', 15],
    ['a surface above a swing', 'giant-double-straight', 'end.surfaceHeight', 15],
  ])('%s: the same named error in every reader', (_, id, input, value) => {
    const spec = specOf(fileOf(id));
    const changed = findInput(spec, input).put(spec, value);
    const said = new Set(Object.values(READERS).map((fly) => attempt(fly, changed)));
    expect(said.size).toBe(1);
    expect([...said][0]).toMatch(/^\w+Error: /);
  });

  it('keys out of order are refused by a study as by a flight', () => {
    const spec = specOf(fileOf('back-tuck'));
    const [first, ...rest] = spec.blocks;
    const late = { ...spec, blocks: [{ ...first, to: { ...first.from, s: first.from.s - 0.1 } }, ...rest] };
    const said = new Set(Object.values(READERS).map((fly) => attempt(fly, late)));
    expect([...said]).toHaveLength(1);
    expect([...said][0]).toMatch(/^ScheduleOrderError: /);
  });

  it('an odd pair of workers has the same margin and map: requests hold the start, not a take-off', () => {
    const spec = specOf(fileOf('vault-handspring-half'));
    const request = usualStudy(spec, 1, contact);
    const [a, b] = [request, structuredClone(request)].map((r) => new StudyRunner(r, contact).samples(0, 3).results);
    expect(b).toEqual(a);
    expect(() =>
      openMap({
        spec,
        x: { input: 'contact.force', from: 2, to: 3, count: 2 },
        y: { input: 'takeoff.h.z', from: 40, to: 50, count: 2 },
        results: ['short'],
        window: [],
      }),
    ).toThrow('takeoff.h.z is given by the contact; vary contact.force, contact.lean or contact.h.z');
  });
});
