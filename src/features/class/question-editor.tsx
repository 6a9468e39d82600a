/** One question as it is written: what is asked, what it is set against, and at once what that comes to. */
import { createUniqueId, For, Show } from 'solid-js';
import { useShell } from '../../app/page.ts';
import { Icon } from '../../ui/icon.tsx';
import type { ClassRoomState } from './class-state.ts';
import { type DraftQuestion, moveQuestion, putReadout } from './draft.ts';
import type { WriteState } from './write-state.ts';
import { writeTexts as t } from './write-words.ts';

const KINDS = ['number', 'words'] as const;
const UNITS = ['s', 'm', 'cm', 'm/s', 'rev', 'rev/s', 'deg', 'deg/s', 'kg', 'N', 'J', 'kg m^2', 'kg m^2/s'] as const;

export function QuestionEditor(props: {
  room: ClassRoomState;
  state: WriteState;
  question: DraftQuestion;
  index: number;
  focus: (index: number) => void;
}) {
  const shell = useShell();
  const n = (): number => props.index + 1;
  const count = (): number => props.state.draft().questions.length;
  const lacks = (field: 'ask' | 'simulated'): boolean =>
    props.state.missing().some((one) => typeof one === 'object' && one.question === props.index && one.field === field);
  const put = (part: Partial<DraftQuestion>): void => props.state.setQuestion(props.index, part);
  const move = (by: 1 | -1): void => {
    props.state.edit(moveQuestion(props.state.draft(), props.index, by), t.steps.move(n()));
    props.focus(props.index + by);
  };
  const remove = (): void => {
    const before = props.state.draft();
    const at = props.index;
    const questions = before.questions.filter((_, i) => i !== at);
    props.state.edit({ ...before, questions }, t.steps.remove(n()));
    const gone = before.questions[at];
    shell.notify({
      text: t.removed(at + 1),
      action: {
        title: t.undo,
        run: () => {
          const now = props.state.draft();
          if (now.questions === questions) props.state.undo();
          else props.state.edit({ ...now, questions: now.questions.toSpliced(at, 0, gone) }, t.steps.add);
        },
      },
    });
    props.focus(Math.min(at, questions.length - 1));
  };
  return (
    <fieldset class="question-editor">
      <legend>
        <span class="question-no">{n()}</span>
        <span class="spoken">{t.question(n())}</span>
      </legend>
      <div class="question-tools">
        <button
          type="button"
          class="plain square"
          aria-label={t.up(n())}
          title={t.up(n())}
          disabled={props.index === 0}
          onClick={() => move(-1)}
        >
          <Icon name="down" size={16} />
        </button>
        <button
          type="button"
          class="plain square"
          aria-label={t.down(n())}
          title={t.down(n())}
          disabled={n() === count()}
          onClick={() => move(1)}
        >
          <Icon name="down" size={16} />
        </button>
        <button type="button" class="plain square" aria-label={t.remove(n())} title={t.remove(n())} onClick={remove}>
          <Icon name="close" size={16} />
        </button>
      </div>
      <label class="write-field">
        <span>{t.ask}</span>
        <textarea
          rows={1}
          maxLength={200}
          value={props.question.ask}
          aria-invalid={lacks('ask')}
          onInput={(e) => put({ ask: e.currentTarget.value.replace(/\n/g, ' ') })}
        />
      </label>
      <Show when={lacks('ask')}>
        <p class="write-fault">{t.missing.ask}</p>
      </Show>
      <label class="write-field">
        <span>{t.help}</span>
        <input
          type="text"
          maxLength={300}
          placeholder={t.helpHint}
          value={props.question.help}
          onInput={(e) => put({ help: e.currentTarget.value })}
        />
      </label>
      <div class="write-field">
        <span aria-hidden="true">{t.kind}</span>
        <fieldset class="write-kinds" aria-label={t.kind}>
          <For each={KINDS}>
            {(kind) => (
              <button
                type="button"
                class="small"
                aria-pressed={props.question.kind === kind}
                onClick={() => {
                  put({ kind });
                  props.state.settle();
                }}
              >
                {t.kinds[kind]}
              </button>
            )}
          </For>
        </fieldset>
      </div>
      <Show
        when={props.question.kind === 'number'}
        fallback={
          <label class="write-field">
            <span>{t.shows}</span>
            <textarea
              rows={2}
              maxLength={1000}
              placeholder={t.showsHint}
              value={props.question.shows}
              onInput={(e) => put({ shows: e.currentTarget.value })}
            />
          </label>
        }
      >
        <NumberPart {...props} put={put} lacks={lacks('simulated')} />
      </Show>
    </fieldset>
  );
}

function NumberPart(props: {
  room: ClassRoomState;
  state: WriteState;
  question: DraftQuestion;
  index: number;
  lacks: boolean;
  put: (part: Partial<DraftQuestion>) => void;
}) {
  let formula!: HTMLInputElement;
  const id = createUniqueId();
  const value = () => props.state.valueOf(props.index);
  const fault = (): string | undefined => {
    const now = value();
    if (props.lacks) return t.missing.simulated;
    return now && 'missing' in now ? now.missing : undefined;
  };
  const readout = (name: string): void => {
    if (name === '') return;
    const { selectionStart, selectionEnd, value: text } = formula;
    props.put({ simulated: putReadout(text, name, selectionStart ?? text.length, selectionEnd ?? text.length) });
    props.state.settle();
    formula.focus();
  };
  return (
    <>
      <div class="write-against">
        <label class="write-field">
          <span>{t.simulated}</span>
          <input
            ref={formula}
            type="text"
            spellcheck={false}
            autocomplete="off"
            maxLength={400}
            placeholder={t.simulatedHint}
            value={props.question.simulated}
            aria-invalid={fault() !== undefined}
            aria-describedby={id}
            onInput={(e) => props.put({ simulated: e.currentTarget.value })}
          />
        </label>
        <label class="write-unit">
          <span>{t.unit}</span>
          <input
            type="text"
            spellcheck={false}
            autocomplete="off"
            maxLength={40}
            list={`${id}-units`}
            placeholder={t.unitHint}
            value={props.question.unit}
            onInput={(e) => props.put({ unit: e.currentTarget.value })}
          />
          <datalist id={`${id}-units`}>
            <For each={UNITS}>{(unit) => <option value={unit} />}</For>
          </datalist>
        </label>
      </div>
      <div class="write-field write-readouts">
        <span />
        <select
          aria-label={t.readouts}
          title={t.readoutsHint}
          value=""
          onChange={(e) => {
            readout(e.currentTarget.value);
            e.currentTarget.value = '';
          }}
        >
          <option value="">{t.readouts}</option>
          <For each={props.room.classing.readouts}>{(name) => <option value={name}>{name}</option>}</For>
        </select>
        <output id={id} class="write-value">
          <Show
            when={fault()}
            fallback={
              <Show when={value()} fallback={<span class="quiet">{props.state.isStale() ? t.computing : ''}</span>}>
                {(now) => {
                  const known = () => now() as { figures: string; unit: { name: string } };
                  return (
                    <>
                      <span class="quiet">{t.value}</span> <b>{known().figures}</b> <small>{known().unit.name}</small>
                    </>
                  );
                }}
              </Show>
            }
          >
            {(why) => <span class="write-fault">{why()}</span>}
          </Show>
        </output>
      </div>
      <Show when={cautionZero(value())}>
        <p class="write-caution">
          <Icon name="caution" size={16} /> {t.zero}
        </p>
      </Show>
      <Show when={props.state.givenAway(props.index).length > 0}>
        <p class="write-caution">
          <Icon name="caution" size={16} /> {t.givenAway(props.state.givenAway(props.index))}
        </p>
      </Show>
    </>
  );
}

const ZERO = 1e-9;
const cautionZero = (value: ReturnType<WriteState['valueOf']>): boolean =>
  value !== undefined && 'value' in value && Math.abs(value.value) < ZERO;
