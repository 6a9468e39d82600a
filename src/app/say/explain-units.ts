/** The words of an explanation in the units that are set. The physics hands over numbers as text, without their unit. */
import type { ExplainWords } from '../../../sim/index.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { decimalsOf, type QuantityKind, toShown, type Units, unitOf, units } from '../../ui/units.ts';
import { texts } from '../words.ts';

const e = texts.explain;
type Words = Partial<ExplainWords>;

const OF_WHAT: Readonly<Record<string, QuantityKind>> = {
  [e.longMoment]: 'moment',
  [e.lateralMoment]: 'moment',
  [e.twistRate]: 'rate',
  [e.somersaultRate]: 'rate',
};

const made = new WeakMap<Units, Words>();

/** The same object as long as the units are the same. */
export function explainWords(): Words {
  const set = units();
  const known = made.get(set) ?? makeWords(set);
  made.set(set, known);
  return known;
}

function makeWords(set: Units): Words {
  // its own number of places where it is shown as it was computed, else those that the unit deserves
  const convert = (q: QuantityKind, value: string): string =>
    toShown(q, 1) === 1 ? value : formatNumber(toShown(q, Number(value)), decimalsOf(q));
  const joules = (value: string): string =>
    `${formatNumber(set.measure === 'imperial' ? Number(toShown('energy', Number(value)).toPrecision(2)) : Number(value), 0)} ${unitOf('energy')}`;
  return {
    ...e,
    momentOf: (value) => `${convert('moment', value)} ${unitOf('moment')}`,
    rateOf: (value, turned) => e.rateOf(convert('rate', value), unitOf('rate'), turned),
    fromTo: (what, before, after) => e.fromTo(what, OF_WHAT[what] ? convert(OF_WHAT[what], before) : before, after),
    putIn: (value) => e.putIn(joules(value)),
    tookOut: (value) => e.tookOut(joules(value)),
  };
}
