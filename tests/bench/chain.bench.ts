/** A chain of three flights with three contacts by their impulse: aim 30 ms. Swing and landing are timed apart (swing.bench.ts, landing.bench.ts). */
import { bench, describe } from 'vitest';
import { athletes, chains, shapes } from '../../presets/index.ts';
import { loadBuiltSim } from './built-sim.ts';

const sim = await loadBuiltSim();
const contact = await sim.loadContact();
const spec = sim.parseChain(chains['trampoline-jump-tuck-full'], { athletes, shapes });

describe('three bounces in the bed', () => {
  bench(
    'built and flown, with the courses of their contacts',
    () => {
      sim.flyChain(sim.buildChain(spec), contact);
    },
    { time: 3000, warmupTime: 1000 },
  );
});
