/**
 * A session that a build of skill file version 1 kept, for this one. Undo is differences, and these are paths into the
 * document: each state is found again from the steps, migrated, and the differences are taken again between the migrated ones.
 */
import type { SkillFile } from '../../sim/index.ts';
import { applyDifference, calcDifference, type Json } from './difference.ts';
import type { History, HistoryStep } from './history.ts';

/** Undefined: no document of a version that is known. */
export type MigrateDocument = (doc: unknown) => SkillFile | undefined;

interface State {
  readonly doc: Json;
  readonly beside: Json;
}

/** Undefined: the document itself cannot be read. A step that cannot is left out with all that lie behind it. */
export function migrateHistory(h: History<unknown>, migrate: MigrateDocument): History<SkillFile> | undefined {
  const doc = migrate(h.doc);
  if (!doc) return undefined;
  const now = { doc: h.doc as Json, beside: h.beside ?? null };
  const done = rewrite(now, [...h.done].reverse(), 'before', migrate).reverse();
  const undone = rewrite(now, [...h.undone].reverse(), 'after', migrate).reverse();
  const mark = h.mark === undefined ? undefined : migrate(h.mark);
  const { doc: _, done: __, undone: ___, mark: ____, beside, ...rest } = h;
  return {
    ...rest,
    doc,
    done,
    undone,
    ...(mark ? { mark } : {}),
    ...(beside === undefined ? {} : { beside: migrateBeside(beside, migrate) }),
    ...(doc === h.doc ? {} : { original: JSON.stringify(h.doc) }),
  };
}

/** Steps from the state now outwards, the nearest first. */
function rewrite(
  now: State,
  steps: readonly HistoryStep[],
  to: 'before' | 'after',
  migrate: MigrateDocument,
): HistoryStep[] {
  const out: HistoryStep[] = [];
  let near = now;
  let nearMigrated = migrateState(near, migrate);
  for (const step of steps) {
    const far = turn(near, step, to);
    const farMigrated = far && migrateState(far, migrate);
    if (!far || !farMigrated || !nearMigrated) break;
    const [before, after] = to === 'before' ? [farMigrated, nearMigrated] : [nearMigrated, farMigrated];
    const difference = calcDifference(before.doc, after.doc);
    const beside = calcDifference(before.beside, after.beside);
    const { beside: _, ...rest } = step;
    // a change of what the phase before gives is no change any more
    if (difference.length + beside.length > 0 || step.opened)
      out.push({ ...rest, difference, ...(beside.length > 0 ? { beside } : {}) });
    near = far;
    nearMigrated = farMigrated;
  }
  return out;
}

function turn(state: State, step: HistoryStep, to: 'before' | 'after'): State | undefined {
  try {
    return {
      doc: applyDifference(state.doc, step.difference, to),
      beside: step.beside ? applyDifference(state.beside, step.beside, to) : state.beside,
    };
  } catch {
    return undefined;
  }
}

function migrateState({ doc, beside }: State, migrate: MigrateDocument): State | undefined {
  const migrated = migrate(doc);
  return migrated && { doc: migrated as unknown as Json, beside: migrateBeside(beside, migrate) };
}

/** The versions beside the document; one that cannot be read stays as it is, and says so where it is shown. */
function migrateBeside(beside: Json, migrate: MigrateDocument): Json {
  if (!Array.isArray(beside)) return beside;
  return beside.map((one) => {
    if (typeof one !== 'object' || one === null || Array.isArray(one)) return one;
    return { ...one, file: (migrate(one.file) as unknown as Json | undefined) ?? one.file };
  });
}
