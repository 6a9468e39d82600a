/**
 * A landing to rest with its report, as one drag of a knob costs: knees at touchdown changed, mat changed, legs stiffer. The
 * bound is 150 ms on two cores. docs/benchmarks.md says what was reached.
 */
import { bench, describe } from 'vitest';
import { FIRM, makeDropEntry } from '../contact/drop-entry.ts';
import { loadBuiltSim } from './built-sim.ts';

const sim = await loadBuiltSim();
const contact = await sim.loadContact();
const body = sim.makeHuman({ name: 'Bench', sex: 'female', mass: 54, stature: 1.62 });
const { MATS } = contact;
const entry = makeDropEntry(body, FIRM.drop);

let turn = 0;
/** A knee no landing before had, rad. */
const nextKnee = (): number => 0.4 + 1e-4 * (turn++ % 1000);
const use = (result: ReturnType<typeof contact.land>): void => {
  if (result.kind !== 'landed' || !(result.report.peak.bodyWeights > 1)) throw new Error('not landed');
};

const LONG = { time: 4000, warmupTime: 1500 };
describe('a landing with its report', () => {
  bench('another knee angle at touchdown', () => use(contact.land(contact.withKnee(entry, nextKnee()), FIRM)), LONG);
  bench('on the soft layer', () => use(contact.land(entry, { ...FIRM, mat: MATS.withSoftLayer })), LONG);
  const stiffer = { ...FIRM.action, stiffness: 1.5 };
  bench('stiffer legs', () => use(contact.land(entry, { ...FIRM, action: stiffer })), LONG);
});
