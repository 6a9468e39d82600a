/**
 * The runs of swings: those of one Body that differ only in when the hands let go share one, followed as far as the latest of
 * them needs. The first release costs the run, another costs a reading. A run's steps do not depend on the release, so what is
 * read is bit for bit what a run of its own would give (tests/contact/release.test.ts).
 */
import type { Body } from '../body/body.ts';
import { type Hang, makeHang } from './hang.ts';
import type { HangSpec, SwingSpec } from './swing-spec.ts';
import { SwingStepper } from './swing-stepper.ts';

interface KeptRun {
  readonly key: string;
  readonly hang: Hang;
  readonly stepper: SwingStepper;
}
/** runs kept for a Body, the one used last in front: some half a megabyte each */
const MOST_KEPT = 4;
const kept = new WeakMap<Body, KeptRun[]>();

export function getRun(spec: SwingSpec): KeptRun {
  const { body, release: _, late: __, duration: ___, ...rest } = spec;
  const hangSpec: HangSpec = { body, ...rest };
  const key = JSON.stringify(rest, (_key, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  );
  const list = kept.get(body) ?? [];
  kept.set(body, list);
  const i = list.findIndex((k) => k.key === key);
  if (i >= 0) {
    const [found] = list.splice(i, 1);
    list.unshift(found);
    return found;
  }
  const hang = makeHang(hangSpec);
  const made = { key, hang, stepper: new SwingStepper(hang) };
  list.unshift(made);
  list.length = Math.min(list.length, MOST_KEPT);
  return made;
}
