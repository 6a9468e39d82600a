/** The estimate sheet behind a worksheet: what is given while answers are open; in full, with its lesson and what it is set against, after all are locked. */
import { createResource, For, Show } from 'solid-js';
import { usePage } from '../../app/page.ts';
import type { SheetRow } from '../../engine/estimate.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { units } from '../../ui/units.ts';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';
import { listGiven, wordName } from './given.ts';
import type { SheetFlightState } from './sheet-flight.ts';

export function SheetBehind(props: { work: AnswerWork; flight: SheetFlightState; onClose: () => void }) {
  return (
    <Sheet title={props.work.isComplete() ? t.fullSheet : t.sheet} onClose={() => props.onClose()}>
      <Show when={props.work.isComplete()} fallback={<GivenLines work={props.work} />}>
        <FullSheet work={props.work} flight={props.flight} />
      </Show>
    </Sheet>
  );
}

function GivenLines(props: { work: AnswerWork }) {
  const given = () => listGiven(props.work.numbers()?.sheet ?? []);
  return (
    <>
      <h3>{props.work.worksheet().sheet.title}</h3>
      <Show when={given().length > 0} fallback={<p class="quiet">{t.noSheet}</p>}>
        <ul class="list">
          <For each={given()}>
            {(one) => (
              <li>
                <code>{one.key}</code> = <b>{one.value}</b> {one.unit} <span class="quiet">{one.note}</span>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <p class="quiet">{t.namesInWorking}</p>
    </>
  );
}

function FullSheet(props: { work: AnswerWork; flight: SheetFlightState }) {
  const { services } = usePage();
  const sheet = () => props.work.worksheet().sheet;
  const [rows] = createResource(
    () => {
      const found = props.flight();
      return found && 'result' in found ? { result: found.result, part: sheet(), measure: units().measure } : undefined;
    },
    async ({ result, part, measure }) => {
      const estimating = await services.load.estimating();
      return (await estimating.compute(estimating.ofSkill(part), result, { measure })).rows;
    },
  );
  return (
    <>
      <h3>{sheet().title}</h3>
      <ul class="list">
        <For each={rows.error ? [] : rows()} fallback={<For each={sheet().lines}>{(text) => <li>{text}</li>}</For>}>
          {(row) => <FullLine row={row} />}
        </For>
      </ul>
      <Show when={sheet().lesson}>
        {(lesson) => (
          <>
            <h3>{t.lesson}</h3>
            <p>{lesson()}</p>
          </>
        )}
      </Show>
    </>
  );
}

function FullLine(props: { row: SheetRow }) {
  const quantity = () => (props.row.result.kind === 'quantity' ? props.row.result : undefined);
  return (
    <Show when={quantity()}>
      {(q) => (
        <li>
          {wordName(q().name)}: <b>{props.row.value}</b> {props.row.unit}{' '}
          <Show when={props.row.simulated}>
            {(value) => <span>; {t.simulatedBeside([value(), props.row.unit].filter(Boolean).join(' '))} </span>}
          </Show>
          <span class="quiet">{q().compared?.sentence ?? q().note}</span>
        </li>
      )}
    </Show>
  );
}
