/** What counts as landed, whose errors, the reflex; and where the errors are from. */
import { createMemo, For } from 'solid-js';
import type { ErrorSetting } from '../../../sim/index.ts';
import { wordCoarseTwist } from '../../../sim/words/basis-words.ts';
import { useFlight } from '../../app/page.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { AskState } from './ask-state.ts';
import { nameInput } from './ask-words.ts';
import type { StudyState, WindowKind } from './study-state.ts';
import { askTexts as t } from './words.ts';

type Props = { ask: AskState; study: StudyState };

const LEVELS: readonly ErrorSetting['level'][] = ['national', 'elite'];
/** Half to twice the usual errors. */
const FACTORS = [0.5, 1, 2];

export function StudyChoices(props: Props) {
  return (
    <div class="study-choices">
      <label class="ask-pick">
        {t.window}
        <select
          value={props.study.kind()}
          onChange={(e) => props.study.setKind(e.currentTarget.value as WindowKind)}
          title={t.windowMeans[props.study.kind()]}
        >
          <option value="usual">{t.windows.usual}</option>
          <option value="wanted">{t.windows.wanted}</option>
        </select>
      </label>
      <label class="ask-pick">
        {t.errorLevel}
        <select
          value={props.study.errors().level}
          onChange={(e) => props.study.setErrors({ level: e.currentTarget.value as ErrorSetting['level'] })}
        >
          <For each={LEVELS}>{(level) => <option value={level}>{t.errorLevels[level]}</option>}</For>
        </select>
      </label>
      <label class="ask-pick">
        {t.errorFactor}
        <select
          value={String(props.study.errors().factor)}
          onChange={(e) => props.study.setErrors({ factor: Number(e.currentTarget.value) })}
        >
          <For each={FACTORS}>
            {(factor) => <option value={String(factor)}>{t.errorTimes(formatNumber(factor, 1))}</option>}
          </For>
        </select>
      </label>
      <fieldset class="ask-switch">
        <legend>{t.balance}</legend>
        <For each={['off', 'on'] as const}>
          {(way) => (
            <button
              type="button"
              aria-pressed={props.study.balanced() === (way === 'on')}
              onClick={() => props.study.setBalanced(way === 'on')}
            >
              {t[way]}
            </button>
          )}
        </For>
      </fieldset>
    </div>
  );
}

/** A longer list of inputs is not read. */
const MOST_NAMED = 3;

export function BalanceWords(props: Props) {
  const flight = useFlight();
  const sources = createMemo(() => {
    const open = props.ask.skill();
    const found = open ? (props.ask.asking()?.errorSources(open, props.study.errors()) ?? []) : [];
    return found.map(({ inputs, source }) => {
      if (found.length === 1 && inputs.length > MOST_NAMED) return t.spreadFrom(t.spreadAll, source);
      const names = inputs.map((id) => (open ? nameInput(id, flight.spans(), open.spec) : id));
      const said =
        names.length > MOST_NAMED
          ? t.andMore(names.slice(0, MOST_NAMED - 1), names.length - MOST_NAMED + 1)
          : names.join(', ');
      return t.spreadFrom(said, source);
    });
  });
  const isHandLate = (): boolean => props.ask.inputOf('swing.lateHand') !== undefined;
  const together = (): string => {
    const open = props.ask.skill();
    const said = open ? (props.ask.asking()?.errorsTogether(open) ?? '') : '';
    // inputs by the names of the page
    return said.replace(/\b(takeoff|swing|contact|block|end)[.:][\w.:]*\w/g, (id) =>
      open ? nameInput(id, flight.spans(), open.spec) : id,
    );
  };
  return (
    <div class="balance-words">
      <p class="quiet">
        {props.study.balanced()
          ? t.balanceMeans.on(formatNumber(props.ask.asking()?.balance.delayS ?? 0, 2))
          : t.balanceMeans.off}
      </p>
      <details>
        <summary>{t.whereFrom}</summary>
        <p class="quiet">
          {t.spreadIs} {sources().join(' ')} {t.together(together())}{' '}
          {isHandLate() ? wordCoarseTwist(PAGE_NUMBERS) : ''}
        </p>
      </details>
    </div>
  );
}
