// One skill, two ways: everything but the one change is the same, and the sentence is true. Of every ready skill, whatever it is.

import { describe, expect, it } from 'vitest';
import { chains, shapes, skills } from '../../presets/index.ts';
import {
  answerChange,
  buildSkill,
  type ChangeOffer,
  calcFrames,
  type Flight,
  type Frames,
  flySkill,
  frameTimes,
  type LaunchedSkill,
  type OneChange,
  offerChanges,
  parseSkill,
  relaunch,
  type SkillFile,
  type SkillSpec,
  updateSkill,
} from '../../sim/index.ts';
import { calcShapeMoments } from '../../sim/measure/shape-moments.ts';
import { armAngles, legAngles, wayOfArms } from '../../sim/skill/change-ways.ts';
import { poseAt } from '../../sim/skill/held-stretch.ts';
import { wordChangeAnswer } from '../../sim/words/change-answer-words.ts';
import { makeLegs } from '../../src/engine/legs.ts';
import { fileOf, launchedWith, shelf, skillOf, specOf } from './load.ts';

const RATE_HZ = 240;
/** Share: measured 0 for most, 5e-16 where a take-off is given in straight somersaults. */
const H_SAME = 1e-12;
/** rad, of a joint that both ways move alike. Touchdown is agreed to 1e-9 s, and times that count from it are those flown: at 10 rad/s 1e-8; measured 1.1e-9. */
const POSE_SAME = 1e-8;
/** rad, of joints that rest: what is at rest at all (sim/skill/held-stretch.ts). */
const SHAPE_SAME = (0.5 * Math.PI) / 180;
/** rad: the two ways of a joint differ by at least so much while both are held */
const DIFFERS = (20 * Math.PI) / 180;
/** Of a ratio, by the printed rates and the trapezoid against what was turned: measured 0.4 %. */
const RATIO_SAME = 0.02;
/** Of the rate against the moments of inertia, where all momentum is about the long axis: measured 1.4e-6. */
const BY_MOMENTS = 1e-3;
interface Case {
  readonly id: string;
  readonly file: SkillFile;
  readonly spec: SkillSpec;
  readonly skill: LaunchedSkill;
  readonly flight: Flight;
  readonly frames: Frames;
  readonly offers: readonly ChangeOffer[];
}
const framesOf = (flight: Flight): Frames => calcFrames(flight, frameTimes(flight.duration, RATE_HZ));
const isOffer = (offer: ChangeOffer): offer is OneChange => 'spec' in offer;

const legs = makeLegs((file) => flySkill(skillOf(file)));
function caseOf(id: string, file: SkillFile): Case {
  const spec = specOf(file);
  const skill = skillOf(file);
  const flight = flySkill(skill);
  const frames = framesOf(flight);
  return { id, file, spec, skill, flight, frames, offers: offerChanges({ spec, skill, flight, frames }) };
}
/** Every flight of every ready skill that begins in the page at once. */
const cases: Case[] = Object.entries({ ...skills, ...chains }).flatMap(([id, file]) =>
  Array.from({ length: legs.count(file) }, (_, leg) => caseOf(`${id}#${leg + 1}`, legs.fileOf(file, leg))),
);
const offered = cases.flatMap((one) => one.offers.filter(isOffer).map((change) => ({ ...one, change })));
const find = (id: string): Case => {
  const found = cases.find((c) => c.id === `${id}#1`);
  if (!found) throw new RangeError(id);
  return found;
};

/** The other way, launched as the skill itself was. */
function otherOf(skill: LaunchedSkill, { spec }: OneChange): LaunchedSkill {
  const { schedule, contacts = [], start } = buildSkill(spec);
  const takeoff = start.kind === 'stated' ? { takeoff: start.takeoff } : {};
  return relaunch(skill, { schedule, contacts, ...takeoff });
}

/** Rows of a rate, rev/s, while the two are held. */
function rowsOf(frames: Frames, turn: OneChange['turn'], { from, to }: OneChange['held']): [number, number][] {
  const rows: [number, number][] = [];
  for (let i = 0; i < frames.n; i++)
    if (frames.t[i] >= from - 0.5 / RATE_HZ && frames.t[i] <= to + 0.5 / RATE_HZ)
      rows.push([frames.t[i], frames[`${turn}Rate`][i] / (2 * Math.PI)]);
  return rows;
}
const meanOf = (rows: readonly [number, number][]): number => {
  let area = 0;
  for (let i = 1; i < rows.length; i++) area += ((rows[i][1] + rows[i - 1][1]) / 2) * (rows[i][0] - rows[i - 1][0]);
  return rows.length > 1 ? area / (rows[rows.length - 1][0] - rows[0][0]) : rows[0][1];
};

describe.each(offered)('$id, $change.kind', ({ skill, flight, frames, spec, file, change }) => {
  const b = otherOf(skill, change);
  const other = flySkill(b);
  const otherFrames = framesOf(other);
  const { body } = flight;

  it('leaves the ground alike, with the same angular momentum, and moves alike until the change begins', () => {
    const h = Math.hypot(...flight.h_Scm_W);
    for (let k = 0; k < 3; k++) {
      expect(Math.abs(other.h_Scm_W[k] - flight.h_Scm_W[k])).toBeLessThanOrEqual(H_SAME * h);
      expect(other.v_WScm_W0[k]).toBe(flight.v_WScm_W0[k]);
      expect(Math.abs(other.p_WScm_W0[k] - flight.p_WScm_W0[k])).toBeLessThan(POSE_SAME);
    }
    for (const share of [0, 0.2, 0.5, 0.8, 1]) {
      const [now, was] = [poseAt(other, share * change.begins), poseAt(flight, share * change.begins)];
      // the plane of an arm that is overhead means nothing, and its turn makes up for it
      const free = body.shoulders.flatMap((s) =>
        Math.abs(Math.sin(was[s.elevation])) < 1e-6 ? [s.plane, s.turn] : [],
      );
      const off = body.angles.map((_, i) => (free.includes(i) ? 0 : Math.abs(now[i] - was[i])));
      expect(Math.max(...off), `at ${share * change.begins} s`).toBeLessThan(POSE_SAME);
    }
  });

  it('changes that one thing, well, while both are held; hands that held the legs let go', () => {
    const free = new Set(spec.contacts?.length ? ['shoulder', 'elbow', 'forearm', 'wrist'] : []);
    const changed = change.kind === 'arms' ? /^(shoulder|elbow)/ : /^(hip|knee|lumbar|thoracic|neck)/;
    for (const t of [change.held.from, (change.held.from + change.held.to) / 2, change.held.to]) {
      const [now, was] = [poseAt(other, t), poseAt(flight, t)];
      const off = body.angles.map((_, i) => Math.abs(now[i] - was[i]));
      expect(Math.max(...off)).toBeGreaterThan(DIFFERS);
      body.angles.forEach(({ name }, i) => {
        if (!changed.test(name) && ![...free].some((joint) => name.startsWith(joint)))
          expect(off[i], `${name} at ${t}`).toBeLessThan(POSE_SAME);
      });
    }
  });

  it('is wholly in the other shape all through the stretch that is compared', () => {
    // a straight body bends its hips alone: knees and back go on as they were
    const isBent = change.kind === 'hips' && change.other === 'bent';
    const hips = body.angles.flatMap(({ name }, i) => (name.startsWith('hipFlexion') ? [i] : []));
    const shape = change.kind === 'arms' ? armAngles(body) : isBent ? hips : legAngles(body);
    const there = poseAt(other, (change.held.from + change.held.to) / 2);
    for (const share of [0, 0.25, 0.75, 1]) {
      const now = poseAt(other, change.held.from + share * (change.held.to - change.held.from));
      for (const i of shape) expect(Math.abs(now[i] - there[i]), body.angles[i].name).toBeLessThan(SHAPE_SAME);
    }
    if (change.kind === 'arms') expect(wayOfArms(body, there)).toBe(change.other);
  });

  it('comes to the shape of the landing when the skill itself does', () => {
    const [now, was] = [poseAt(other, flight.duration), poseAt(flight, flight.duration)];
    expect(Math.max(...body.angles.map((_, i) => Math.abs(now[i] - was[i])))).toBeLessThan(1e-6);
  });

  it('says what the rates say, row by row', () => {
    const said = answerChange(change, frames, otherFrames);
    const { lead } = wordChangeAnswer(change, said, { left: 'floor', hasMomentum: true });
    const held = { from: change.held.from, to: Math.min(change.held.to, other.duration) };
    const way = Math.sign(frames[change.turn][frames.n - 1] - frames[change.turn][0]);
    const others = rowsOf(otherFrames, change.turn, held);
    const rates = [way * meanOf(rowsOf(frames, change.turn, held)), way * meanOf(others)];
    if (said.kind === 'notDefined') throw new Error('nothing of the ready skills is not defined');
    const [fast, slow] = said.faster === 'own' ? rates : [rates[1], rates[0]];
    expect(fast).toBeGreaterThanOrEqual(slow);
    const first = (rows: readonly [number, number][]): number => way * rows[0][1];
    const least = (rows: readonly [number, number][]): number => Math.min(...rows.map(([, rate]) => way * rate));
    const owns = rowsOf(frames, change.turn, held);
    const [fastRows, slowRows] = said.faster === 'own' ? [owns, others] : [others, owns];
    const slowFrames = said.faster === 'own' ? otherFrames : frames;
    const rest = slowFrames[`${change.turn}Rate`].filter((_, i) => slowFrames.t[i] >= held.from);
    const isBack = Math.min(...rest.map((rate) => (way * rate) / (2 * Math.PI))) < 0;
    if (said.kind === 'turnsBack') {
      expect(isBack).toBe(true);
      expect(least(slowRows)).toBeLessThan((2 / 3 + RATIO_SAME) * first(slowRows));
      expect(lead).toMatch(
        least(fastRows) > 0 ? /keeps the twist going; .* dies away and turns back\.$/ : /stops and turns back/,
      );
    } else if (said.kind === 'stops') expect(slow).toBeLessThan(0.1 * fast + 0.03);
    else if (said.kind === 'fades' || said.kind === 'pauses') {
      expect(least(slowRows)).toBeLessThan(0.2 * first(slowRows) + RATIO_SAME);
      if (said.kind === 'pauses') expect(least(fastRows)).toBeLessThan(0.2 * first(fastRows) + RATIO_SAME);
    } else if (said.kind === 'short') expect(held.to - held.from).toBeLessThan(0.1);
    else {
      expect(held.to - held.from).toBeGreaterThanOrEqual(0.1);
      expect(least(slowRows)).toBeGreaterThan(0.19 * first(slowRows));
      expect(Math.abs((said.ratio ?? 0) / (fast / slow) - 1)).toBeLessThan(RATIO_SAME);
      const printed = /([\d.]+) times as (?:fast|long)/.exec(lead)?.[1];
      if (said.kind === 'faster')
        expect(Math.abs(Number(printed) - fast / slow)).toBeLessThan(0.05 + RATIO_SAME * (fast / slow));
      else expect(lead).toMatch(/within \d per cent/);
    }
    expect(/times as (?:fast|long)|within/.test(lead)).toBe('ratio' in said);
    expect(lead).not.toMatch(/NaN|Infinity|undefined|0\.0 times/);
  });

  it('is a file that flies the same', () => {
    const after = updateSkill(file, spec, change.spec);
    const { schedule, contacts = [] } = buildSkill(parseSkill(JSON.parse(JSON.stringify(after)), shelf));
    const again = flySkill(relaunch(b, { schedule, contacts }));
    expect(Math.abs(again.duration - other.duration)).toBeLessThan(1e-6);
  });
});

describe('what is asked of which skill', () => {
  it('arms of every skill that twists by at least a turn: with arms wide it twists on more slowly, or dies away', () => {
    const twisting = cases.filter(({ skill, file }) => (file.target?.twists ?? 0) >= 1 && !skill.launch.rail);
    expect(twisting.length).toBeGreaterThan(4);
    for (const { id, skill, frames, offers } of twisting) {
      const [first] = offers;
      expect(first, id).toMatchObject({ kind: 'arms', turn: 'twist' });
      if (!isOffer(first)) continue;
      const said = answerChange(first, frames, framesOf(flySkill(otherOf(skill, first))));
      if (said.kind === 'notDefined') throw new Error(id);
      expect(said.own.mean, id).toBeGreaterThan(1.5 * said.other.mean);
      expect(said.own.least, id).toBeGreaterThan(0);
      // the throw is in both: they begin to twist alike
      expect(said.other.mean, id).toBeGreaterThan(0);
    }
  });

  it.each([
    ['trampoline-full', 'turnsBack'],
    ['back-straight-full', 'turnsBack'],
    ['back-straight-half', 'short'],
    ['cat-turn', 'pauses'],
  ])('%s: no number is said of arms wide (%s)', (id, kind) => {
    const { skill, frames, offers } = find(id);
    const arms = offers.find((o) => o.kind === 'arms');
    if (!arms || !isOffer(arms)) throw new Error(id);
    const said = answerChange(arms, frames, framesOf(flySkill(otherOf(skill, arms))));
    expect(said.kind).toBe(kind);
    expect(said).not.toHaveProperty('ratio');
  });

  it('arms that belong to a tuck or a pike are not asked about', () => {
    for (const id of ['back-tuck', 'back-pike', 'double-back-tuck', 'dive-two-and-a-half-pike'])
      expect(
        find(id).offers.find((o) => o.kind === 'arms'),
        id,
      ).toEqual({ kind: 'arms', reason: 'onLegs' });
  });

  it("an open tuck is the catalogue's, and one that is as open is not opened", () => {
    const { hipFlexion, kneeFlexion, lumbarFlexion, thoracicFlexion } = shapes.openTuck.angles;
    const { skill, flight, offers } = find('double-back-tuck');
    const tuck = offers.find((o) => o.kind === 'tuck');
    if (!tuck || !isOffer(tuck)) throw new Error('a tuck is opened');
    const other = flySkill(otherOf(skill, tuck));
    const pose = poseAt(other, (tuck.held.from + tuck.held.to) / 2);
    const deg = (name: string): number => (180 / Math.PI) * pose[flight.body.angles.findIndex((a) => a.name === name)];
    for (const side of ['L', 'R']) {
      expect(deg(`hipFlexion${side}`)).toBeCloseTo(hipFlexion ?? Number.NaN, 6);
      expect(deg(`kneeFlexion${side}`)).toBeCloseTo(kneeFlexion ?? Number.NaN, 6);
    }
    expect(deg('lumbarFlexion')).toBeCloseTo(lumbarFlexion ?? Number.NaN, 6);
    expect(deg('thoracicFlexion')).toBeCloseTo(thoracicFlexion ?? Number.NaN, 6);
    const asOpen = caseOf('open', updateSkill(find('double-back-tuck').file, find('double-back-tuck').spec, tuck.spec));
    expect(asOpen.offers.find((o) => o.kind === 'tuck')).toEqual({ kind: 'tuck', reason: 'open' });
  });

  it('a tuck is opened, a pike straightened, a straight body bent; without a twist that comes before the arms', () => {
    const kinds = (id: string): string[] =>
      find(id)
        .offers.filter(isOffer)
        .map((o) => `${o.kind} ${o.own} ${o.other}`);
    expect(kinds('back-tuck')[0]).toBe('tuck tight open');
    expect(kinds('back-pike')[0]).toBe('hips bent straight');
    expect(kinds('back-straight')[0]).toBe('hips straight bent');
    for (const { id, offers } of cases) {
      const legsAsked = offers.filter(isOffer).filter((o) => o.kind !== 'arms');
      expect(legsAsked.length, id).toBeLessThanOrEqual(2);
    }
  });

  it('a jump that spins: the ratio is that of its moments of inertia', () => {
    const { skill, flight, frames, offers } = caseOf('former', fileOf('former/arms-in-spin'));
    const [arms, ...rest] = offers;
    expect(rest).toEqual([
      { kind: 'tuck', reason: 'noSomersault' },
      { kind: 'hips', reason: 'noSomersault' },
    ]);
    if (!isOffer(arms)) throw new Error('arms are held in');
    const other = flySkill(otherOf(skill, arms));
    const middle = (arms.held.from + arms.held.to) / 2;
    const [close, wide] = [flight, other].map((f) => calcShapeMoments(f.body, [...poseAt(f, middle)]).long);
    const said = answerChange(arms, frames, framesOf(other));
    // a former demo, wrapped for less than 0.1 s: the mean rates are there, a ratio of them is not said
    expect(said).toMatchObject({ kind: 'short', faster: 'own' });
    if (said.kind === 'notDefined') return;
    expect(Math.abs(said.own.mean / said.other.mean / (wide / close) - 1)).toBeLessThan(BY_MOMENTS);
  });

  it('what a skill has not is refused by its reason', () => {
    const one = find('back-straight');
    const { schedule, takeoff, body, ...rest } = one.skill;
    const noArms = launchedWith({ ...rest, takeoff, schedule, body: { ...body, shoulders: [] } });
    const { flight, frames, spec } = one;
    const asked = { spec, frames, skill: noArms, flight: { ...flight, body: noArms.body } };
    expect(offerChanges(asked).find((o) => o.kind === 'arms')).toEqual({ kind: 'arms', reason: 'noShoulders' });
    const elevation = body.shoulders[0].elevation;
    const sampled = [{ angle: elevation, start: 0, rate: 10, values: [0, 0] }];
    const measured = { ...one, skill: relaunch(one.skill, { schedule: { ...schedule, sampled } }) };
    expect(offerChanges(measured).find((o) => o.kind === 'arms')).toEqual({ kind: 'arms', reason: 'measured' });
    expect(offerChanges(find('back-tuck')).find((o) => o.kind === 'hips')).toEqual({ kind: 'hips', reason: 'tucked' });
  });
});

describe('the sentence', () => {
  const arms = { kind: 'arms', turn: 'twist', own: 'in', other: 'wide', hasThrow: true } as const;
  const rates = (own: number, other: number) => ({
    own: { mean: own, least: own },
    other: { mean: other, least: other },
    seconds: 0.4,
  });
  const say = (change: Parameters<typeof wordChangeAnswer>[0], answer: Parameters<typeof wordChangeAnswer>[1]) => {
    const { lead, rest } = wordChangeAnswer(change, answer, { left: 'floor', hasMomentum: true });
    return `${lead} ${rest}`;
  };

  it('names the faster way and what was the same, by the place', () => {
    const answer = { kind: 'faster', faster: 'own', ratio: 2.97, ...rates(9, 3) } as const;
    expect(say(arms, answer)).toBe(
      'Arms in: twists 3.0 times as fast as with arms wide. Same push off the floor, same throw.',
    );
    const tuck = { kind: 'tuck', turn: 'somersault', own: 'tight', other: 'open', hasThrow: false } as const;
    expect(say(tuck, answer)).toBe(
      'A tight tuck somersaults 3.0 times as fast as an open one. Same push off the floor.',
    );
    expect(say({ ...tuck, own: 'open', other: 'tight' }, { ...answer, faster: 'other' })).toMatch(
      /^A tight tuck somersaults 3\.0 times as fast as an open one\./,
    );
    const hips = { kind: 'hips', turn: 'somersault', own: 'straight', other: 'bent', hasThrow: false } as const;
    expect(say(hips, { ...answer, faster: 'other' })).toMatch(
      /^Hips straight: a somersault takes 3\.0 times as long as bent\./,
    );
    expect(say({ ...hips, own: 'bent', other: 'straight' }, answer)).toMatch(
      /^Hips bent: somersaults 3\.0 times as fast as straight\./,
    );
    const rest = (left: 'bed' | 'rail' | 'divingBoard', hasMomentum = true) =>
      wordChangeAnswer(tuck, answer, { left, hasMomentum }).rest;
    expect([rest('bed'), rest('rail'), rest('divingBoard'), rest('bed', false)]).toEqual([
      'Same push off the bed.',
      'Same release.',
      'Same push off the board.',
      'Same take-off.',
    ]);
    const level = { ...arms, own: 'wide', other: 'in' } as const;
    expect(say(level, { ...answer, faster: 'other' })).toMatch(
      /^Arms in: twists 3\.0 times as fast as with arms wide\./,
    );
  });

  it('says no ratio where there is next to none, where the turn stops, or turns back', () => {
    expect(say(arms, { kind: 'alike', faster: 'own', ratio: 1.02, ...rates(9, 8.8) })).toMatch(
      /^Arms in or arms wide: the twist is as fast, within 2 per cent\./,
    );
    expect(say(arms, { kind: 'stops', faster: 'own', ...rates(3 * Math.PI, 0.2) })).toMatch(
      /^Arms wide: the twist all but stops, 0\.03 against 1\.50 twists a second\./,
    );
    expect(say(arms, { kind: 'turnsBack', faster: 'own', ...rates(9, -1) })).toMatch(
      /^Arms in keeps the twist going; arms wide it dies away and turns back\. Same push/,
    );
    expect(say(arms, { kind: 'turnsBack', faster: 'own', ...rates(-0.5, -1) })).toMatch(
      /^Arms wide: the twist stops and turns back\./,
    );
    expect(say(arms, { kind: 'fades', faster: 'own', ...rates(9, 1) })).toMatch(
      /^Arms in keeps the twist going; arms wide it dies away\. Same push/,
    );
    expect(say(arms, { kind: 'short', faster: 'own', ...rates(9, 3) })).toMatch(
      /^Arms in: twists faster than with arms wide; held too briefly to say how many times\./,
    );
    expect(say(arms, { kind: 'pauses', faster: 'own', ...rates(5 * Math.PI, 3 * Math.PI) })).toMatch(
      /^Arms in: 1\.00 twists while they are held, against 0\.60 with arms wide\./,
    );
    expect(say(arms, { kind: 'notDefined' })).not.toMatch(/\d/);
    expect(say(arms, { kind: 'faster', faster: 'own', ratio: 3, turnsBackLater: true, ...rates(9, 3) })).toBe(
      'Arms in: twists 3.0 times as fast as with arms wide. Arms wide, it turns back before the landing. Same push off the floor, same throw.',
    );
  });

  it('is read from rates: to zero and through zero there is no ratio', () => {
    const { frames } = find('arms-in-spin');
    const change = { turn: 'twist', held: { from: 0.28, to: 0.39 } } as const;
    const turned = (by: number): Frames => ({
      ...frames,
      twist: frames.twist.map((x) => by * x),
      twistRate: frames.twistRate.map((x) => by * x),
    });
    expect(answerChange(change, frames, turned(0.01))).toMatchObject({ kind: 'stops' });
    expect(answerChange(change, frames, turned(-0.5))).toMatchObject({ kind: 'turnsBack' });
    expect(answerChange(change, frames, turned(0.99))).toMatchObject({ kind: 'alike' });
    expect(answerChange(change, turned(0.5), frames)).toMatchObject({ kind: 'faster', faster: 'other' });
    const later = turned(0.5);
    later.twistRate[later.n - 2] = -1;
    expect(answerChange(change, frames, later)).toMatchObject({ kind: 'faster', turnsBackLater: true });
    expect(answerChange(change, frames, turned(0.5))).not.toHaveProperty('turnsBackLater');
    expect(answerChange({ ...change, held: { from: 0.33, to: 0.4 } }, frames, turned(0.5))).toMatchObject({
      kind: 'short',
    });
    const fading = turned(0.5);
    fading.t.forEach((t, i) => {
      if (t > 0.37) fading.twistRate[i] *= 0.15;
    });
    expect(answerChange(change, frames, fading)).toMatchObject({ kind: 'fades' });
    expect(answerChange(change, fading, fading)).toMatchObject({ kind: 'pauses' });
    fading.twistRate[fading.n - 2] = -1;
    expect(answerChange(change, frames, fading)).toMatchObject({ kind: 'turnsBack' });
    expect(answerChange(change, frames, turned(Number.NaN))).toEqual({ kind: 'notDefined' });
    for (const by of [0.01, -0.5]) expect(answerChange(change, frames, turned(by))).not.toHaveProperty('ratio');
  });
});
