/**
 * Five seconds of swing with all readouts, and a release window of 40 flights. Aims: under 150 ms, under 1 s
 * (docs/benchmarks.md).
 */
import { bench, describe } from 'vitest';
import { held, twoGiants } from '../contact/swings.ts';
import { loadBuiltSim } from './built-sim.ts';

const sim = await loadBuiltSim();
const contact = await sim.loadContact();
const { release: _, ...open } = twoGiants;
const five = { ...open, moves: { ...open.moves, rounds: 3 }, duration: 5 };
let turn = 0;
/** A swing that none before was. */
const next = () => ({ ...five, start: { kind: 'handstand' as const, nudge: 0.3 + 1e-5 * turn++ } });

describe('5 s of swing with readouts', () => {
  bench('driven', () => void contact.makeSwing(next()).peaks, { time: 2000 });
  bench('limited', () => void contact.makeSwing({ ...next(), strength: 0.6 }).peaks, { time: 2000 });
});

describe('a launch from two giants', () => {
  const giant = () => ({ ...twoGiants, start: next().start });
  bench('a swing that none before was', () => void contact.makeSwing(giant()).stateAt(0), { time: 2000 });
  bench('the same with 0.6 of the strength', () => void contact.makeSwing({ ...giant(), strength: 0.6 }).stateAt(0), {
    time: 2000,
  });
  bench('let go at another angle', () => {
    contact.makeSwing({ ...twoGiants, release: { at: 'angle', angle: 7.4 + 1e-5 * (turn++ % 10000) } }).stateAt(0);
  });
});

describe('release window', () => {
  const swing = contact.makeSwing(twoGiants);
  const { body, gravity } = twoGiants;
  const takeoff = {
    height: { of: 'massCentre' as const, y: 1 },
    v_WScm_W: [0, 0, 0] as const,
    somersault: 0,
    tilt: 0,
    twist: 0,
    momentum: { kind: 'vector' as const, h_Scm_W: [0, 0, 0] as const },
  };
  const skill = sim.launch({
    title: '',
    body,
    gravity,
    schedule: { base: held, blocks: [], keys: [], sampled: [], smoothing: { kind: 'gcv' as const } },
    start: { kind: 'stated', takeoff },
    end: { kind: 'touchdown' as const, surface: { kind: 'mat' as const, y: 0.2 } },
  });
  bench('40 releases', () => {
    sim.calcReleaseWindow(skill, swing, { count: 40, meets: () => true });
  });
  bench('a late hand of 20 ms', () => {
    contact.holdLate(swing, 'right', 0.02);
  });
});
