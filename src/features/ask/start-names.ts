/** Names of what comes before the flight, in the words of the page: a swing's release and keys, a push. */
import type { SkillSpec } from '../../../sim/index.ts';
import { askTexts as t } from './words.ts';

/** Undefined for an input that is none of a swing or contact. */
export function nameStart(id: string, { start }: SkillSpec): string | undefined {
  const known = t.starts[id];
  if (known) return known;
  const [, number, what] = /^swing\.key:(\d+)\.(angle|at)$/.exec(id) ?? [];
  if (!number || start.kind !== 'swing') return undefined;
  const { keys, last } = start.swing.moves;
  // counted as the inputs are: the keys of every round, then those of the last one, joint by joint
  let n = Number(number);
  for (const [isLast, moves] of [[false, keys] as const, [true, last ?? {}] as const])
    for (const [joint, list] of Object.entries(moves)) {
      if (n <= list.length) {
        const name = t.swingKey(t.swingJoints[joint] ?? joint, String(n), isLast);
        return what === 'at' ? t.swingKeyAt(name) : name;
      }
      n -= list.length;
    }
  return undefined;
}
