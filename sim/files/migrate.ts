/** Brings older skill files up to the present version, one step at a time. */
import { FieldError } from '../math/field-error.ts';
import { SKILL_VERSION } from './skill-file.ts';

type Migration = (file: Record<string, unknown>) => Record<string, unknown>;

/** MIGRATIONS[n] turns version n into n + 1; version 1 is the first, so there are none yet. */
const MIGRATIONS: Readonly<Record<number, Migration>> = {};

export function migrate(
  file: Record<string, unknown>,
  steps: Readonly<Record<number, Migration>> = MIGRATIONS,
  newest: number = SKILL_VERSION,
): Record<string, unknown> {
  let now = file;
  const version = now.version;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    throw new FieldError('version', version, `a whole number from 1 to ${newest}`);
  if (version > newest)
    throw new FieldError('version', version, `at most ${newest} (this file comes from a newer Shapeflight)`);
  for (let from = version; from < newest; from++) {
    const step = steps[from];
    if (!step) throw new FieldError('version', version, `a version that can be brought up to ${newest}`);
    now = { ...step(now), version: from + 1 };
  }
  return now;
}
