// What is said of take-offs and contacts: what must caution, what must not; entry and exit against a contact summed in small steps; the spring of a bed against its own
// motion and against the published table of it.
import { describe, expect, test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import * as contact from '../../sim/contact/index.ts';
import { takeoffOf } from '../../sim/files/takeoff-json.ts';
import type { SkillFile } from '../../sim/index.ts';
import { wordNotCompared } from '../../sim/measure/caution-words.ts';
import { calcContactPlaces } from '../../sim/motion/contact-places.ts';
import { calcBedSpring } from '../../sim/skill/contact-bed.ts';
import { PLACE_RANGES, upOutOf } from '../../sim/skill/contact-ranges.ts';
import { type ContactCaution, type ContactReport, calcContactReport } from '../../sim/skill/contact-report.ts';
import { flyWhole } from '../../sim/skill/whole.ts';
import { contactCautionDetail, contactCautionTitle, formatContactCautions } from '../../sim/words/contact-words.ts';
import { formatWhole } from '../../sim/words/whole-words.ts';
import { contactIn, flightIn } from '../files/parts.ts';
import { builtOf, fileOf } from './load.ts';

const reportOf = (file: SkillFile): ContactReport => {
  const report = calcContactReport(flyWhole(builtOf(file), contact));
  if (!report) throw new Error('no report');
  return report;
};
const kinds = (r: ContactReport): string[] => r.cautions.map((c) => c.kind);
const valueIn = (r: ContactReport, kind: ContactCaution['kind']): number =>
  r.cautions.find((c) => c.kind === kind)?.value ?? Number.NaN;

/** A back somersault off the floor, with a contact before it or without. */
interface Asked {
  readonly id?: string;
  readonly up?: number;
  readonly along?: number;
  readonly h?: number;
  readonly inUp?: number;
  readonly inAlong?: number;
  readonly hIn?: number;
  readonly time?: number;
}
function floor(a: Asked): SkillFile {
  const file = a.id === undefined ? fileOf('former/floor-double-tuck') : fileOf(a.id);
  const takeoff = flightIn(file).takeoff ?? {};
  if (a.id === undefined)
    Object.assign(takeoff, { velocityMPerS: { along: -1, up: 5.2 }, momentum: { straightSomersaults: 0.893 } });
  if (takeoff.velocityMPerS) {
    takeoff.velocityMPerS.up = a.up ?? takeoff.velocityMPerS.up;
    takeoff.velocityMPerS.along = a.along ?? takeoff.velocityMPerS.along;
  }
  if (a.h !== undefined) takeoff.momentum = { vectorKgM2PerS: [0, 0, a.h] };
  const before = file.phases[0].kind === 'contact' ? contactIn(file) : undefined;
  if (before) {
    const { along = 0, up = 0 } = before.velocityMPerS ?? {};
    before.velocityMPerS = { along: a.inAlong ?? along, up: a.inUp ?? up };
    before.timeS = a.time ?? before.timeS;
    before.momentumKgM2PerS = [0, 0, a.hIn ?? 35];
  }
  file.phases = file.phases.filter((p) => p.kind !== 'landing');
  return file;
}

describe('what no athlete does is cautioned', () => {
  test('9 m/s off the floor out of a contact of 120 ms: speed, force and some 2400 J of work', () => {
    const r = reportOf(floor({ up: 9 }));
    expect(kinds(r)).toEqual(expect.arrayContaining(['upOut', 'meanUp', 'work']));
    // by hand of a man of 66 kg: 33 (82 - 17.64 - 0.49) + 66 x 9.81 x 0.12 x 4.15 and what turning takes up or gives: 2427 J without it
    const withoutTurning = 33 * (82 - 18.13) + 66 * 9.81 * 0.12 * 4.15 - 3;
    expect(Math.abs(valueIn(r, 'work') * 66 - withoutTurning)).toBeLessThan(50);
    expect(valueIn(r, 'meanUp')).toBeCloseTo(9.7 / (0.12 * 9.81) + 1, 2);
    const text = formatContactCautions(r);
    expect(text).toContain('leaves the floor upward at 9.0 m/s; usual 3.8 to 5.2 (from memory)');
    expect(text).toMatch(
      /the contact with the floor adds 36\.6 J\/kg to what the athlete came with; up to 10\.0 \(computed from ranges from memory\)/,
    );
  });

  test('9 m/s without a contact, from the floor by where it starts and lands', () => {
    expect(kinds(reportOf(floor({ id: 'back-tuck', up: 9 })))).toEqual(['upOut']);
  });

  test('an angular momentum of 300 kg m2/s, with a contact and without', () => {
    expect(kinds(reportOf(floor({ h: 300 })))).toEqual(expect.arrayContaining(['momentum', 'work']));
    const r = reportOf(floor({ id: 'double-back-straight', h: 300 }));
    expect(kinds(r)).toContain('momentum');
    // said of the body that is flown: 0.66 times its mass and squared stature
    const { massKg, statureM } = athletes['tobias-fenn'] as { massKg: number; statureM: number };
    const usual = (0.66 * massKg * statureM ** 2).toFixed(0);
    expect(formatContactCautions(r)).toContain(
      `leaves the floor with 300 kg·m²/s of angular momentum; up to ${usual} for this body (computed from ranges from memory)`,
    );
    const one = r.cautions.find((c) => c.kind === 'momentum');
    expect(one && `${contactCautionTitle(one)} ${contactCautionDetail(one)}`).toBe(
      `Leaves the floor with 300 kg·m²/s of angular momentum. Up to ${usual} for this body (computed from ranges from memory).`,
    );
  });

  test('23.7 body weights in 30 ms', () => {
    const r = reportOf(floor({ time: 0.03 }));
    expect(kinds(r)).toEqual(expect.arrayContaining(['time', 'meanUp']));
    const { mean } = r.contact ?? { mean: { up: 0, along: 0 } };
    expect(Math.hypot(mean.up, mean.along)).toBeCloseTo(23.7, 1);
  });

  test('a run-up of 9 m/s to a springboard, 12 m/s off a bed, 5 m/s off a platform', () => {
    const file = floor({ inAlong: -9 });
    contactIn(file).place = 'springboard';
    expect(kinds(reportOf(file))).toContain('alongIn');
    expect(kinds(reportOf(floor({ id: 'cat-turn', up: 12 })))).toEqual(['upOut']);
    const dive = floor({ id: 'dive-forward-one-and-half-pike', up: 5 });
    const takeoff = flightIn(dive).takeoff;
    if (takeoff) takeoff.lowestPointHeightM = 10;
    const r = reportOf(dive);
    expect([r.place, kinds(r)]).toEqual(['platform', ['upOut']]);
  });

  test('the summary for machines has every range that was compared, and the cautions', () => {
    const json = JSON.parse(JSON.stringify(takeoffOf(reportOf(floor({ up: 9 })))));
    expect(Object.keys(json.ranges).sort()).toEqual([
      'alongIn',
      'alongOut',
      'meanUp',
      'momentum',
      'time',
      'upOut',
      'work',
    ]);
    expect(json.ranges.work).toMatchObject({ low: null, high: 10, unit: 'J/kg', basis: 'computed' });
    expect(json.cautions[0]).toMatchObject({
      kind: 'upOut',
      value: 9,
      low: 3.8,
      high: 5.2,
      unit: 'm/s',
      basis: 'usual',
    });
    expect(json.contact.workJPerKg).toBeCloseTo(36.6, 1);
  });

  test('the shell says no more that a foot could give it', () => {
    const w = flyWhole(builtOf(floor({ up: 9 })), contact);
    const text = formatWhole(w, calcContactReport(w));
    expect(text).toContain('neither slips nor pulls; outside what is known, see above');
    expect(text).not.toMatch(/possible/);
  });
});

describe('what is usual is not', () => {
  /** common practice, no source: [up, along, in up, in along, s] */
  const floors: readonly (readonly [string, Asked])[] = [
    ['a layout', { up: 4.1, along: -2.8, inUp: -1, inAlong: -5, time: 0.12, h: 70, hIn: 60 }],
    ['a double tuck', { up: 4.6, along: -2.6, inUp: -1, inAlong: -5.2, time: 0.12, h: 75, hIn: 60 }],
    ['a double straight', { up: 5.1, along: -2.4, inUp: -0.8, inAlong: -5.6, time: 0.12, h: 120, hIn: 70 }],
  ];
  test.each(floors)('%s off the floor', (_, asked) => {
    // where feet would have to be is asked below
    expect(kinds(reportOf(floor(asked))).filter((k) => k !== 'place' && k !== 'turn')).toEqual([]);
  });

  /** the middle of what is remembered of each place: [in along, in up, out along, out up, s], and momentum in m h2 per s */
  const elsewhere = [
    ['springboard', -7.8, -1, -4.8, 3.9, 0.12, 0.3],
    ['vaultTable', -4.8, 2.4, -3.4, 2.6, 0.17, 0.4],
    ['trampoline', 0, -8.8, 0, 8.8, 0.31, 0.3],
    ['divingBoard', -0.5, -4, -1, 5.4, 0.45, 0.3],
  ] as const;
  test.each(elsewhere)('a contact with a %s', (place, inAlong, inUp, along, up, time, share) => {
    const h = share * 66 * 1.7 ** 2;
    const file = floor({ inAlong, inUp, along, up, time, h, hIn: h });
    contactIn(file).place = place;
    flightIn(file).takeoff.lowestPointHeightM = 1.2;
    // the body of the floor is not over that place as it would be: movement is asked below
    const movement = ['height', 'place', 'reach', 'slides', 'turn'];
    expect(kinds(reportOf(file)).filter((k) => !movement.includes(k))).toEqual([]);
  });

  test('bare take-offs of technique: a tuck of 0.8 s, a bed of 1.9 s, a dive from 3 m', () => {
    expect(kinds(reportOf(floor({ id: 'back-tuck', up: 3.9 })))).toEqual([]);
    expect(kinds(reportOf(floor({ id: 'cat-turn', up: 9.3 })))).toEqual([]);
    expect(kinds(reportOf(fileOf('dive-forward-one-and-half-pike')))).toEqual([]);
  });

  test('the middle of every range lies within it, and the take-off panel starts there', () => {
    for (const [place, preset] of Object.entries(contact.TAKEOFF_PRESETS)) {
      const { time, upOut } = PLACE_RANGES[place as keyof typeof contact.TAKEOFF_PRESETS];
      // of a platform no time is known well enough to caution by
      if (place !== 'platform') {
        expect(preset.time).toBeGreaterThan(time?.low ?? Number.NaN);
        expect(preset.time).toBeLessThan(time?.high ?? Number.NaN);
      }
      expect(upOutOf(place as keyof typeof PLACE_RANGES, 'female').high).toBeLessThanOrEqual(upOut.high);
    }
  });

  test('every range says what it rests on; a published one names its paper', () => {
    for (const ranges of Object.values(PLACE_RANGES))
      for (const r of [
        ranges.time,
        ranges.alongIn,
        ranges.alongOut,
        ranges.upOut,
        ranges.meanUp,
        ranges.peakUp,
        ranges.momentum,
        ranges.work,
        ranges.peakOverMean.up,
      ]) {
        if (!r) continue;
        expect(r.low).toBeLessThanOrEqual(r.high);
        if (r.basis === 'published') expect(r.source).toMatch(/(19|20)\d\d, (J |Gym Coach |practice study)/);
        if (r.basis === 'usual') expect(r.source).toMatch(/from memory/);
      }
  });

  test('peaks of a springboard are 2 and 3 times the mean (Sano 2007), others pi/2 to 2.2 times', () => {
    const file = floor({ inAlong: -8 });
    contactIn(file).place = 'springboard';
    const board = reportOf(file).contact;
    if (!board) throw new Error('no contact');
    expect(board.peak.up).toEqual([2 * board.mean.up, 2 * board.mean.up]);
    expect(board.peak.along).toEqual([3 * board.mean.along, 3 * board.mean.along]);
    const c = reportOf(floor({})).contact;
    expect(c?.peak.up[0]).toBeCloseTo((Math.PI / 2) * (c?.mean.up ?? 0), 9);
    expect(c?.peak.up[1]).toBeCloseTo(2.2 * (c?.mean.up ?? 0), 9);
  });

  test.each([12, 14, 16, 17.9, 18, 40, 41])(
    'at %s years forces and work are compared where strengths are, and else not',
    (ageYears) => {
      const file = floor({ up: 9 });
      const adult = 'ref' in file.athlete ? athletes[file.athlete.ref] : file.athlete;
      if (adult.kind !== 'human') throw new Error('no human');
      const { segments: _, ...own } = adult;
      file.athlete = { ...own, ageYears };
      const whole = flyWhole(builtOf(file), contact);
      const r = calcContactReport(whole);
      const isSaid = wordNotCompared(whole.flight.body) === undefined;
      expect(r?.contact?.loadsCompared).toBe(isSaid);
      expect(r?.cautions.some((c) => c.kind === 'meanUp')).toBe(isSaid);
    },
  );

  test('the loads of a young athlete are compared with nothing, the speeds are', () => {
    const file = floor({ up: 9 });
    file.athlete = { ref: 'jory-quill' };
    const r = reportOf(file);
    expect(kinds(r)).toContain('upOut');
    expect(kinds(r)).not.toContain('meanUp');
    expect(kinds(r)).not.toContain('work');
    expect(r.contact?.loadsCompared).toBe(false);
  });

  test('no place, no judgement: a flight from a bar, a body on the moon', () => {
    expect(calcContactReport(flyWhole(builtOf(fileOf('giant-double-straight')), contact))).toBeUndefined();
    const moon = floor({ id: 'back-tuck', up: 2 });
    moon.gravityMPerS2 = 1.62;
    expect(calcContactReport(flyWhole(builtOf(moon), contact))).toBeUndefined();
  });
});

/** The arms stay overhead until 50 ms after take-off. */
function holdOverhead(file: SkillFile): SkillFile {
  const first = flightIn(file).schedule.blocks?.[0];
  if (first) first.to.s = 0.05;
  return file;
}

describe('entry, exit, reach and place are of one movement', () => {
  /** Back from the take-off under a half-sine force of constant lean on a fixed point of the foot, in small steps. */
  function entryOf(file: SkillFile, mean: number, lean: number, foot: number): SkillFile {
    const { flight } = flyWhole(builtOf(file), contact);
    const { mass } = flight.body;
    const T = contactIn(file).timeS ?? 0.12;
    const points = calcContactPlaces(flight, 0).filter((p) => p.part === 'feet');
    const xs = points.map((p) => p.x);
    const at = [Math.min(...xs) + foot * (Math.max(...xs) - Math.min(...xs)), Math.min(...points.map((p) => p.low))];
    let p = [flight.p_WScm_W0[0], flight.p_WScm_W0[1]];
    let v = [flight.v_WScm_W0[0], flight.v_WScm_W0[1]];
    let h = flight.h_Scm_W[2];
    let height = 0;
    const n = 4000;
    for (let i = 0; i < n; i++) {
      const F = mean * mass * 9.81 * (Math.PI / 2) * Math.sin((Math.PI * (i + 0.5)) / n);
      const f = [F * Math.sin(lean), F * Math.cos(lean)];
      const dt = T / n;
      const mid = [p[0] - (v[0] * dt) / 2, p[1] - (v[1] * dt) / 2];
      h -= ((at[0] - mid[0]) * f[1] - (at[1] - mid[1]) * f[0]) * dt;
      v = [v[0] - (f[0] / mass) * dt, v[1] - (f[1] / mass - 9.81) * dt];
      p = [mid[0] - (v[0] * dt) / 2, mid[1] - (v[1] * dt) / 2];
      height += (mid[1] - at[1]) / n;
    }
    const before = contactIn(file);
    before.velocityMPerS = { along: v[0], up: v[1] };
    before.momentumKgM2PerS = [0, 0, h];
    before.massCentreOverSurfaceM = height;
    return file;
  }
  /** m; measured: 0.018, as the height stated is a mean over time and the course's one by the force */
  const HEIGHT = 0.03;
  /** m; measured: 7e-9 */
  const CLOSE = 1e-6;
  test('a contact summed over a fixed foot agrees with itself: the place exactly, the height to 3 cm, nothing is cautioned of them', () => {
    for (const foot of [0, 0.5, 1]) {
      // the force passes a little before the mass centre
      const file = entryOf(floor({ up: 4.6, along: -2.4, h: 75 }), 6.4, 0.3, foot);
      const r = reportOf(file);
      const course = r.contact?.course;
      if (!course?.place) throw new Error('no course');
      expect(Math.abs((contactIn(file).massCentreOverSurfaceM ?? 0) - course.meanHeight)).toBeLessThan(HEIGHT);
      // the place counts from the balls of the feet
      const { flight } = flyWhole(builtOf(file), contact);
      const points = calcContactPlaces(flight, 0);
      const xs = points.filter((p) => p.part === 'feet').map((p) => p.x);
      const balls = points.filter((_, k) => flight.body.contacts[k].name.startsWith('ball'));
      const where = Math.min(...xs) + foot * (Math.max(...xs) - Math.min(...xs)) - (balls[0].x + balls[1].x) / 2;
      expect(Math.abs(course.place.x - where)).toBeLessThan(CLOSE);
      expect(kinds(r).filter((k) => ['height', 'place', 'reach'].includes(k))).toEqual([]);
    }
  });

  test('0.17 s at 6 rad/s is 58 degrees', () => {
    const file = floor({ time: 0.17 });
    holdOverhead(file);
    const w = flyWhole(builtOf(file), contact);
    const I = w.contact?.lateralMoment ?? Number.NaN;
    const spun = holdOverhead(floor({ time: 0.17, h: 6 * I, hIn: 6 * I }));
    expect(((reportOf(spun).contact?.course?.turned ?? 0) * 180) / Math.PI).toBeCloseTo(58.442, 3);
  });

  test('a mass centre stated too high, and a place that hands do not reach, are said', () => {
    const r = reportOf(fileOf('vault-handspring-half'));
    expect(kinds(r)).toEqual(expect.arrayContaining(['height', 'place']));
    expect(formatContactCautions(r)).toContain(
      'the mean height of the mass centre over the table is given as 0.90 m; by the take-off and the speeds it is 0.54 to 0.74',
    );
  });

  test('a long contact at speed goes farther than legs reach', () => {
    expect(kinds(reportOf(floor({ time: 0.3, inAlong: -6, along: -5 })))).toContain('reach');
  });
});

test('the same towards +X, facing the other way: the same words', () => {
  const [one, other] = [fileOf('floor-double-tuck'), fileOf('floor-double-tuck')].map((file, i) => {
    file.phases = file.phases.filter((p) => p.kind !== 'landing');
    const { takeoff } = flightIn(file);
    const before = contactIn(file);
    const turned = i === 0 ? 1 : -1;
    takeoff.velocityMPerS.along = -turned;
    takeoff.momentum = { vectorKgM2PerS: [0, 0, turned * 50] };
    takeoff.attitudeDeg = { ...takeoff.attitudeDeg, somersault: turned * 8, twist: i === 0 ? 0 : 180 };
    before.velocityMPerS = { along: -4.2 * turned, up: -0.7 };
    before.momentumKgM2PerS = [0, 0, turned * 35];
    return reportOf(file);
  });
  expect(formatContactCautions(other)).toBe(formatContactCautions(one));
  expect(one.cautions.length).toBeGreaterThan(0);
  expect(other.contact?.course?.swing.value).toBeCloseTo(one.contact?.course?.swing.value ?? 9, 6);
});

describe('the bed as a spring', () => {
  test('speed and time of the table give its depth, stiffness and peak', () => {
    // contacts: 1.8 s in the air, 0.28 to 0.35 s on the bed: 0.82 to 1.03 m, 5.6 to 8.5 kN/m at 60 kg, peak 9.7 to 11.7 body weights
    const [hard, soft] = [0.28, 0.35].map((t) => calcBedSpring(60, 9.81, (1.8 * 9.81) / 2, t));
    expect([hard?.depth, soft?.depth].map((d) => d?.toFixed(2))).toEqual(['0.82', '1.03']);
    expect([hard?.peak, soft?.peak].map((d) => d?.toFixed(1))).toEqual(['11.7', '9.7']);
    expect([hard?.stiffness, soft?.stiffness].map((k) => ((k ?? 0) / 1000).toFixed(1))).toEqual(['8.5', '5.6']);
  });

  test('followed in small steps it takes that time, goes that deep and holds what came down', () => {
    const spring = calcBedSpring(55, 9.81, 7.5, 0.33);
    if (!spring) throw new Error('no spring');
    let [y, v, t, deepest] = [0, -7.5, 0, 0];
    const dt = 1e-6;
    do {
      v += (-9.81 - (spring.stiffness / 55) * y) * dt;
      y += v * dt;
      t += dt;
      deepest = Math.min(deepest, y);
    } while (y < 0);
    expect(t).toBeCloseTo(0.33, 4);
    expect(-deepest).toBeCloseTo(spring.depth, 4);
    expect(spring.held).toBeCloseTo(7.5 ** 2 / 2 + 9.81 * spring.depth, 9);
  });
});
