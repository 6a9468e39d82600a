/** After every finished change one sentence of what it did, from the flights before and after it. A drag under way has its plate; undo and redo say nothing. */
import { createEffect, untrack } from 'solid-js';
import type { HistoryStep } from '../document/history.ts';
import type { FlightResult } from '../engine/result.ts';
import { type BodyRun, continueRun } from './body-run.ts';
import { loadPart } from './load-part.ts';
import { keptState, type Page } from './page.ts';

/** At the first change: the page starts light. */
const loadSentence = loadPart(
  () => import('./change-sentence.ts'),
  (m) => m.sayChange,
);

interface Settled {
  readonly id: number;
  readonly result: FlightResult;
  readonly step: HistoryStep | undefined;
  readonly undone: readonly HistoryStep[];
}

function makeChangeAnswer(page: Page): void {
  const { doc, flight, shell } = page;
  let last: Settled | undefined;
  let run: BodyRun<FlightResult> | undefined;
  const tell = (before: FlightResult, after: FlightResult): void => {
    void loadSentence().then(
      (sayChange) => {
        // another flight has come meanwhile
        if (last?.result !== after) return;
        const said = sayChange(page, before, after);
        if (said) shell.answer.say({ ...said, from: 'change' });
        else shell.answer.clear('change');
      },
      () => shell.answer.clear('change'),
    );
  };
  createEffect(() => {
    const history = doc.history();
    const { result, id, fault, isWaiting } = flight.outcome();
    if (history.mark !== undefined) {
      void loadSentence().catch(() => undefined);
      return;
    }
    if (fault || isWaiting || result.draft || id !== doc.id() || result.file !== doc.file()) {
      if (fault) shell.answer.clear('change');
      return;
    }
    const before = last;
    const step = history.done.at(-1);
    last = { id, result, step, undone: history.undone };
    if (!before || before.id !== id || before.result === result) return;
    const isNew = step !== before.step && step !== before.undone.at(-1) && history.undone.length === 0;
    untrack(() => {
      const isSaid = isNew && step !== undefined && !step.opened;
      run = isSaid ? continueRun(run, before.result, result) : undefined;
      if (isSaid) tell(run?.from ?? before.result, result);
      else shell.answer.clear('change');
    });
  });
}

export const useChangeAnswer = keptState(makeChangeAnswer);
