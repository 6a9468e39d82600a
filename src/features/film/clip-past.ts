/** What was measured in a clip, and how to take it back: a drag is one step, however many moves it has. */

import { type Accessor, batch, createSignal } from 'solid-js';
import type { ClipMeasured } from '../../../sim/index.ts';
import type { Undoing } from '../../app/undoing.ts';
import * as past from '../../document/history.ts';

export const UNMEASURED: ClipMeasured = { marks: [], posed: [] };

export interface MeasuringPast {
  readonly measuring: Accessor<ClipMeasured>;
  /** one step; what is undefined is left out from then on */
  measure(part: Partial<ClipMeasured>, title: string): void;
  /** within a drag, until it is settled or abandoned */
  draft(part: Partial<ClipMeasured>): void;
  settle(title: string): void;
  abandon(): void;
  /** of another clip, or with other frames on the ruler: steps from before no longer fit */
  begin(measuring: ClipMeasured): void;
  readonly undoing: Undoing;
}

function withPart(now: ClipMeasured, part: Partial<ClipMeasured>): ClipMeasured {
  const all = { ...now, ...part };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as unknown as ClipMeasured;
}

/** `changed`: after each step, so that whatever had undo gives it back. `walks`: before a step is taken back or made again. */
export function makeMeasuringPast(changed: () => void, walks: () => void): MeasuringPast {
  const [history, setHistory] = createSignal(past.makeHistory(UNMEASURED));
  const walk = (step: typeof past.undo): void =>
    batch(() => {
      // crosses that are still in the hand go back first
      const isUnderWay = history().mark !== undefined;
      walks();
      setHistory(isUnderWay && step === past.undo ? past.abandon(history()) : step(history()));
    });
  const begin = (measuring: ClipMeasured): void => void setHistory(past.makeHistory(measuring));
  return {
    measuring: () => history().doc,
    measure: (part, title) => {
      setHistory(past.edit(history(), withPart(history().doc, part), title));
      changed();
    },
    draft: (part) => void setHistory(past.setDraft(history(), withPart(history().doc, part))),
    settle: (title) => {
      setHistory(past.settle(history(), title));
      changed();
    },
    abandon: () => void setHistory(past.abandon(history())),
    begin,
    undoing: {
      undoTitle: () => history().done.at(-1)?.title,
      redoTitle: () => history().undone.at(-1)?.title,
      undo: () => walk(past.undo),
      redo: () => walk(past.redo),
    },
  };
}
