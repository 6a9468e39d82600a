/** The plan on paper, and what the camera sees as a table. */
import type { FilmingPlan } from '../../../sim/index.ts';
import { fileName, saveBlob } from '../../app/file-door.ts';
import { useFlight, usePage, useShell } from '../../app/page.ts';
import { readTypeface } from '../../app/page-typeface.ts';
import { printPages } from '../../app/print-pages.ts';
import { texts } from '../../app/words.ts';
import { sayDay } from '../../ui/dates.ts';
import type { PlanState } from './plan-state.ts';
import { planTexts as t } from './plan-words.ts';

export function PlanDoings(props: { state: PlanState; plan: FilmingPlan }) {
  const flight = useFlight();
  const shell = useShell();
  const { services } = usePage();
  const keep = (): void => {
    const engine = props.state.parts()?.engine;
    if (!engine) return;
    const result = flight.result();
    const name = t.csvName(fileName(result.file.title).replace(/\.json$/, ''));
    saveBlob(name, new Blob([engine.csv(result, props.plan)], { type: 'text/csv' }));
    shell.notify({ text: t.saved(name) });
  };
  const print = async (): Promise<void> => {
    const engine = props.state.parts()?.engine;
    if (!engine) return;
    try {
      const paper = await services.load.paper();
      const result = flight.result();
      const name = result.file.title;
      const errors = props.state.errors();
      const typeface = await readTypeface(paper.isBeyondLatin(name));
      const page = paper.plan({
        plan: props.plan,
        flight: paper.makeFlight(result),
        name,
        standing: texts.standingCaution,
        date: sayDay(new Date()),
        ...(errors ? { errors } : {}),
        origin: engine.origin(result),
        ...(typeface ? { typeface } : {}),
      });
      await printPages([page]);
    } catch {
      shell.notify({ text: t.noPrint });
    }
  };
  return (
    <span class="plan-doings">
      <button type="button" class="plain" onClick={() => void print()}>
        {t.print}
      </button>
      <button type="button" class="plain" onClick={keep}>
        {t.csv}
      </button>
    </span>
  );
}
