/**
 * The leg of the document that everything but the chain itself works on: read out of it, and put back. A document of one flight is its own leg. While what a leg begins
 * with is computed, what it began with last is shown; what was never known is not shown yet, but the first leg is.
 */
import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import { getId, type History } from '../document/history.ts';
import type { ChainLegs } from '../engine/legs.ts';

/** More legs than a chain has: each has a number of its own between two documents. */
export const LEGS = 16;

interface LegView {
  readonly file: Accessor<SkillFile>;
  readonly leg: Accessor<number>;
  setLeg(leg: number): void;
  /** the chain with the leg shown changed */
  put(file: SkillFile): SkillFile;
  /** the leg shown, of another state of the chain */
  viewOf(chain: SkillFile): SkillFile;
}

interface Shown {
  readonly file: SkillFile;
  readonly leg: number;
  readonly id: number;
}

/** `known` grows when what comes before a flight has become known. */
export function createLegView(
  legs: ChainLegs,
  history: Accessor<History<SkillFile>>,
  known: Accessor<number>,
): LegView {
  /** of a document just opened, its last: what the others lead to */
  const [asked, setAsked] = createSignal({ id: -1, leg: 0 });
  const shown = createMemo<Shown>((last) => {
    known();
    const { doc, mark } = history();
    const id = getId(history());
    const end = legs.count(doc) - 1;
    const wanted = asked().id === id ? Math.min(asked().leg, end) : end;
    // a hand at work stays on its leg
    const leg = mark !== undefined && last?.id === id ? Math.min(last.leg, end) : wanted;
    for (let reached = leg; reached > 0; reached--) {
      try {
        return { file: legs.fileOf(doc, reached), leg: reached, id };
      } catch {
        // the fault, or the waiting, is that of the legs before, and is said of them
        if (last?.id === id && last.leg === reached)
          return { file: legs.fileLike(doc, reached, last.file), leg: reached, id };
      }
    }
    return { file: legs.fileOf(doc, 0), leg: 0, id };
  });
  return {
    file: createMemo(() => shown().file),
    leg: createMemo(() => shown().leg),
    setLeg: (leg) => setAsked({ id: getId(history()), leg: Math.max(0, leg) }),
    put: (file) => legs.put(history().doc, shown().leg, file),
    viewOf: (chain) => legs.fileLike(chain, shown().leg, shown().file),
  };
}
