/** A chain is its legs: each flown as the skill file of its own, from what the leg before leaves it. */
import { describe, expect, test } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import {
  buildChain,
  buildSkill,
  checkSkillFile,
  type FlownChain,
  flyChain,
  flyWhole,
  type Handover,
  legFile,
  legsOf,
  loadContact,
  makeChainReader,
  parseChain,
  parseSkill,
  putLeg,
  type SkillFile,
} from '../../sim/index.ts';
import { calcContactPlaces } from '../../sim/motion/contact-places.ts';
import { makeState, readState } from '../../sim/motion/state.ts';
import { boardTable, twoBounces } from './files.ts';

const contact = await loadContact();
/** m */
const STAYS = 0.05;
const shelf = { athletes, shapes };
const flown = (file: SkillFile): FlownChain => flyChain(buildChain(parseChain(file, shelf)), contact);

const stateAt = (flight: FlownChain['legs'][number]['whole']['flight'], t: number) => {
  const state = makeState(flight.body);
  readState(flight, t, state);
  return state;
};

describe.each([
  ['board and table', boardTable],
  ['two bounces', twoBounces],
])('%s', (_, make) => {
  test('a leg flown in its chain and its leg file flown alone are the same bits', () => {
    const file = make();
    const chain = flown(file);
    expect(chain.legs.length).toBe(legsOf(file).length);
    chain.legs.forEach((leg, k) => {
      const { flight } = leg.whole;
      const before = chain.legs[k - 1]?.whole.flight;
      const handed: Handover | undefined = before && {
        kind: 'contact',
        v_WScm_W: [...stateAt(before, before.duration).v_WScm_W] as unknown as [number, number, number],
        h_Scm_W: before.h_Scm_W,
      };
      const alone = flyWhole(buildSkill(parseSkill(legFile(file, k, handed), shelf)), contact).flight;
      expect(alone.duration).toBe(flight.duration);
      expect(alone.h_Scm_W).toEqual(flight.h_Scm_W);
      expect(stateAt(alone, alone.duration).quat_WB).toEqual(stateAt(flight, flight.duration).quat_WB);
    });
  });

  test('a leg put back as it is changes nothing of the file, and a changed one changes only that leg', () => {
    const file = make();
    legsOf(file).forEach((place, k) => {
      const handed: Handover = { kind: 'contact', v_WScm_W: [1, 2, 3], h_Scm_W: [4, 5, 6] };
      const leg = legFile(file, k, handed);
      expect(putLeg(file, k, leg)).toEqual(file);
      const phases = leg.phases.map((phase) =>
        phase.kind === 'flight' ? { ...phase, schedule: { ...phase.schedule, base: 'arch' } } : phase,
      );
      const changed = putLeg(file, k, { ...leg, phases });
      changed.phases.forEach((phase, i) => {
        if (i === place.flight) expect(phase).toHaveProperty('schedule.base', 'arch');
        else expect(phase).toEqual(file.phases[i]);
      });
    });
  });

  test('the hands or feet of the next leg begin where those of the leg before came down', () => {
    const { legs } = flown(make());
    const by = make === boardTable ? 'hands' : 'feet';
    const middle = ({ whole: { flight }, offset_W }: (typeof legs)[number], t: number): number => {
      const state = stateAt(flight, t);
      expect(state.p_WScm_W.length).toBe(3);
      return offset_W[0] + limbX(flight, t, by);
    };
    // knuckles and toes: what stays is the middle of hand or foot, about which they turn
    const moved = middle(legs[1], 0) - middle(legs[0], legs[0].whole.flight.duration);
    expect(Math.abs(moved)).toBeLessThan(STAYS);
  });
});

test('a flight to a table ends by its hands, under whose top its feet begin', () => {
  const [first] = flown(boardTable()).legs;
  expect(first.whole.flight.touchdown?.part).toBe('hands');
  expect(first.to).toBeGreaterThan(0.05);
  expect(first.to).toBeLessThan(0.4);
});

test('a chain stops where another part comes down than is to push', () => {
  const file = boardTable();
  const [flight] = file.phases;
  if (flight.kind !== 'flight' || 'durationS' in flight.end) throw new Error('a flight to a surface');
  const chain = flown({
    ...file,
    phases: [{ ...flight, end: { surface: { kind: 'floor', heightM: 0 } } }, ...file.phases.slice(1)],
  });
  expect(chain.stop).toEqual({
    kind: 'otherPart',
    leg: 0,
    part: chain.legs[0].whole.flight.touchdown?.part,
    wanted: 'hands',
  });
  expect(chain.legs.length).toBe(1);
});

test('what a chain cannot be is refused by place and name', () => {
  const file = boardTable();
  const [first, table, last] = file.phases;
  const fault = (phases: SkillFile['phases']) => () => checkSkillFile({ ...file, phases });
  expect(fault([first, last])).toThrow(/phases\[1\]\.kind.*contact, catch, landing, entry after phases\[0\], a flight/);
  expect(fault([first, table])).toThrow(/phases\[1\]\.kind.*a flight after it: a contact ends nothing/);
  expect(fault([first, { ...table, velocityMPerS: { along: 1, up: 1 } } as typeof table, last])).toThrow(
    /phases\[1\]\.velocityMPerS.*nothing: the flight in phases\[0\] gives it/,
  );
  expect(fault([first, { kind: 'catch', rail: 'highBar' }])).toThrow(/phases\[0\]\.end.*a durationS/);
  expect(fault([first, { kind: 'entry' }])).toThrow(/phases\[0\]\.end\.surface\.kind.*water/);
  expect(fault([table, last])).toThrow(/phases\[0\]\.velocityMPerS.*missing/);
  expect(() => parseSkill(file, shelf)).toThrow(/phases.*one flight: this is a chain of 2/);
  const broken = structuredClone(file);
  Object.assign(broken.phases[2], { schedule: { base: 'nosuch' } });
  expect(() => parseChain(broken, shelf)).toThrow(/^phases\[2\]\.schedule\.base/);
});

function limbX(flight: FlownChain['legs'][number]['whole']['flight'], t: number, part: 'hands' | 'feet'): number {
  const points = calcContactPlaces(flight, t).filter((p) => p.part === part);
  return points.reduce((sum, p) => sum + p.x, 0) / points.length;
}

describe('read at any time', () => {
  const file = boardTable();
  const chain = flown(file);
  const read = makeChainReader(chain, contact);

  test('place, velocity and momentum go on through the contact', () => {
    const [first, second] = chain.legs;
    expect(second.from - first.to).toBeCloseTo(0.2, 12);
    for (const edge of [first.to, second.from]) {
      const [a, b] = [read(edge - 1e-9), read(edge + 1e-9)];
      for (const key of ['v_WScm_W', 'p_WScm_W', 'h_Scm_W'] as const)
        for (let k = 0; k < 3; k++) expect(Math.abs(a[key][k] - b[key][k]), `${key} ${k}`).toBeLessThan(1e-5);
    }
    expect([read(0).leg, read(first.to + 0.1).leg]).toEqual([0, 1]);
    expect(read(first.to + 0.1).phase).toBe('contact');
    expect(read(first.to + 0.1).bodyWeights).toBeGreaterThan(2);
  });
});

test('a fault of a flight says of which', () => {
  const file = twoBounces();
  const [first, bed, last] = file.phases;
  if (last.kind !== 'flight') throw new Error('a flight');
  const high = { ...last, title: 'Second', end: { surface: { kind: 'trampoline', heightM: 19 } as const } };
  expect(() => flown({ ...file, phases: [first, bed, high] })).toThrow(/^Second: /);
});
