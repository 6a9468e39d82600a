/** A working: typed in one line, and beneath it set as mathematics, then with numbers and what it comes to. */
import { createSignal, Show } from 'solid-js';
import type { MathNode } from '../../../sim/index.ts';
import { Mathematics } from '../../app/mathematics.tsx';
import type { WorksheetNumbers } from '../../engine/class.ts';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';

type Row = NonNullable<WorksheetNumbers['workings'][number]>;

/** The name that a working without one is computed under. */
const UNNAMED = 'working';

/** A number over a time: whether turns or radians were counted, no unit says; the one who counted does. */
export const workingUnit = (row: Row, asked: string): string =>
  row.unit === 'rad/s' && asked === 'rev/s' && !/rad|deg|rev|rpm/.test(row.numbers ?? '') ? '1/s' : (row.unit ?? '');

export function Working(props: { work: AnswerWork; index: number; unit: string }) {
  const [isEdited, setEdited] = createSignal(false);
  const text = (): string => props.work.worksheet().answers[props.index].working ?? '';
  const row = (): Row | undefined => (text().trim() === '' ? undefined : props.work.numbers()?.workings[props.index]);
  const isLocked = (): boolean => props.work.isLocked(props.index);
  const fault = (): string | undefined => {
    const result = row()?.result;
    return result?.kind === 'fault' && !isEdited() ? result.message : undefined;
  };
  return (
    <div class="pupil-working">
      <h3 class="narrow-head">{t.columns.working}</h3>
      <Show when={!isLocked()}>
        <input
          type="text"
          class="pupil-formula"
          aria-label={t.workingOf(props.index + 1)}
          placeholder={t.writeFormula}
          maxLength={400}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          value={text()}
          onFocus={() => setEdited(true)}
          onBlur={() => setEdited(false)}
          onInput={(e) => props.work.write(props.index, { working: e.currentTarget.value })}
        />
      </Show>
      <Show when={row()?.formula !== undefined && row()} fallback={<PlainWorking text={isLocked() ? text() : ''} />}>
        {(found) => <SetWorking row={found()} n={props.index + 1} unit={workingUnit(found(), props.unit)} />}
      </Show>
      <Show when={fault()}>{(why) => <p class="pupil-said">{why()}</p>}</Show>
    </div>
  );
}

/** What cannot be computed stays as it was written. */
const PlainWorking = (props: { text: string }) => (
  <Show when={props.text.trim()}>{(text) => <p class="pupil-plain">{text()}</p>}</Show>
);

function SetWorking(props: { row: Row; n: number; unit: string }) {
  const result = () => (props.row.result.kind === 'quantity' ? props.row.result : undefined);
  /** without the name that it was given here */
  const formula = (): MathNode => {
    const math = props.row.formula as MathNode;
    const [line] = math.children ?? [];
    if (result()?.name !== UNNAMED || line?.children === undefined) return math;
    return { ...math, children: [{ ...line, children: line.children.slice(2) }] };
  };
  return (
    <div class="pupil-set">
      <Mathematics formula={formula()} label={t.formulaOf(props.n)} />
      <p class="pupil-comes">
        <Show when={props.row.numbers}>{(numbers) => <span class="quiet">= {numbers()} </span>}</Show>={' '}
        <b>{props.row.value}</b> <span class="unit">{props.unit}</span>
      </p>
    </div>
  );
}
