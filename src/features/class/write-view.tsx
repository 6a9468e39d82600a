/** A worksheet that is written for the open skill, each question with its value beside it as it is written. */
import { createSignal, For, Index, onCleanup, onMount, Show } from 'solid-js';
import { baseAddress } from '../../app/base-address.ts';
import { FailedLine } from '../../app/failed-line.tsx';
import { fileName, saveText } from '../../app/file-door.ts';
import { usePage, useShell } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { readTicks, TravelTicks, wordChanges } from '../../app/travel-ticks.tsx';
import { texts } from '../../app/words.ts';
import { Icon } from '../../ui/icon.tsx';
import type { ClassRoomState } from './class-state.ts';
import { draftOf, emptyQuestion, MOST_QUESTIONS, ORDERS } from './draft.ts';
import { QuestionEditor } from './question-editor.tsx';
import { makeWriteState, type WriteState } from './write-state.ts';
import { writeTexts as t } from './write-words.ts';
import './write.css';

const NO_PAST = { undoTitle: () => undefined, redoTitle: () => undefined, undo: () => {}, redo: () => {} };

export function WriteView(props: { room: ClassRoomState }) {
  const shell = useShell();
  // the room is the same for as long as it is open
  // eslint-disable-next-line solid/reactivity
  const state = makeWriteState(props.room);
  let root!: HTMLDivElement;
  const onKeyDown = (e: KeyboardEvent): void => {
    if (!(e.ctrlKey || e.metaKey) || e.altKey || !/^[zy]$/i.test(e.key)) return;
    e.preventDefault();
    e.stopPropagation();
    if (/y/i.test(e.key) || e.shiftKey) state.redo();
    else state.undo();
  };
  onMount(() => {
    root.addEventListener('keydown', onKeyDown);
    root.addEventListener('focusout', state.settle);
    shell.takeUndo(state);
    onCleanup(() => {
      state.settle();
      shell.takeUndo(NO_PAST);
    });
  });
  const count = (): number => state.draft().questions.length;
  const add = (): void => {
    state.edit({ ...state.draft(), questions: [...state.draft().questions, emptyQuestion()] }, t.steps.add);
    focusQuestion(count() - 1);
  };
  const focusQuestion = (index: number): void => {
    root.querySelectorAll<HTMLElement>('.question-editor')[index]?.querySelector<HTMLElement>('textarea')?.focus();
  };
  return (
    <div class="write-view" ref={root}>
      <header class="room-head write-head">
        <h1>
          <b>{count()}</b>
          {t.sentence(count())}
          <b>{props.room.page.doc.chain().title || texts.untitled}</b>
          {t.sentenceEnd}{' '}
          <span class="write-lack" role="status">
            <Show when={state.missing().length > 0}>{t.toDo(state.missing().length)}</Show>
            <Show when={!state.isKept()}> {t.notKept}</Show>
          </span>
        </h1>
        <Begin room={props.room} state={state} />
      </header>
      <div class="write-columns">
        <div class="write-main">
          <Frame state={state} />
          <h2 class="write-questions">{t.questions}</h2>
          <Show when={state.failed()}>
            {(why) => <FailedLine again={() => state.edit(state.draft(), '')}>{t.cannot(why())}</FailedLine>}
          </Show>
          <Index each={state.draft().questions}>
            {(question, index) => (
              <QuestionEditor
                room={props.room}
                state={state}
                question={question()}
                index={index}
                focus={focusQuestion}
              />
            )}
          </Index>
          <p>
            <button type="button" disabled={count() >= MOST_QUESTIONS} onClick={add}>
              {t.add}
            </button>{' '}
            <Show when={count() >= MOST_QUESTIONS}>
              <span class="quiet">{t.most(MOST_QUESTIONS)}</span>
            </Show>
            <Show when={count() === 0}>
              <span class="write-fault">{t.missing.questions}</span>
            </Show>
          </p>
        </div>
        <div class="write-side">
          <GivenSheet room={props.room} state={state} />
          <Travels room={props.room} state={state} />
          <GiveOut room={props.room} state={state} />
        </div>
      </div>
      <p class="standing class-standing">{texts.standingCaution}</p>
    </div>
  );
}

function Begin(props: { room: ClassRoomState; state: WriteState }) {
  const from = (id: string): void => {
    const found = props.room.classing.ready.find((one) => one.id === id);
    if (found) props.state.edit(draftOf(found.worksheet), t.steps.begin);
  };
  return (
    <p class="class-buttons">
      <button type="button" class="plain" onClick={() => props.room.show('start')}>
        {t.back}
      </button>
      <label class="write-begin">
        <span>{t.begin}</span>
        <select
          value=""
          onChange={(e) => {
            from(e.currentTarget.value);
            e.currentTarget.value = '';
          }}
        >
          <option value="">{t.beginPick}</option>
          <For each={props.room.classing.ready}>
            {({ id, worksheet }) => <option value={id}>{worksheet.title}</option>}
          </For>
        </select>
      </label>
      <button type="button" onClick={() => props.state.startOver()}>
        {t.startOver}
      </button>
    </p>
  );
}

/** Title, and how answers lock. */
function Frame(props: { state: WriteState }) {
  const draft = () => props.state.draft();
  const lacksTitle = (): boolean => props.state.missing().includes('title');
  return (
    <>
      <label class="write-field">
        <span>{t.title}</span>
        <input
          type="text"
          maxLength={120}
          value={draft().title}
          aria-invalid={lacksTitle()}
          onInput={(e) => props.state.type({ ...draft(), title: e.currentTarget.value }, t.steps.title)}
        />
      </label>
      <Show when={lacksTitle()}>
        <p class="write-fault">{t.missing.title}</p>
      </Show>
      <fieldset class="write-orders">
        <legend>{t.order}</legend>
        <For each={ORDERS}>
          {(order) => (
            <label>
              <input
                type="radio"
                name="order"
                checked={draft().order === order}
                onChange={() => props.state.edit({ ...draft(), order }, t.steps.order)}
              />
              <span>
                <b>{t.orders[order][0]}</b> <small>{t.orders[order][1]}</small>
              </span>
            </label>
          )}
        </For>
      </fieldset>
    </>
  );
}

interface SheetSaid {
  readonly fault?: string;
  readonly name?: string;
  readonly value?: string;
  readonly unit?: string;
}

function GivenSheet(props: { room: ClassRoomState; state: WriteState }) {
  const draft = () => props.state.draft();
  const kept = () => props.room.page.doc.file().worksheets?.[0];
  const shown = () =>
    props.state.sheet().flatMap((row, i): SheetSaid[] => {
      const { result } = row;
      if (result.kind === 'fault') return [{ fault: t.lineFault(i + 1, result.message) }];
      if (row.value === undefined) return [];
      return [{ name: 'name' in result ? String(result.name) : '', value: row.value, unit: row.unit ?? '' }];
    });
  return (
    <section class="write-sheet" aria-label={t.sheet}>
      <h2>{t.sheet}</h2>
      <label class="write-field">
        <span>{t.sheetTitle}</span>
        <input
          type="text"
          maxLength={200}
          value={draft().sheetTitle}
          onInput={(e) => props.state.type({ ...draft(), sheetTitle: e.currentTarget.value }, t.steps.sheet)}
        />
      </label>
      <label class="write-field">
        <span>{t.lines}</span>
        <textarea
          class="write-lines"
          maxLength={40_000}
          rows={Math.max(4, Math.min(draft().lines.length + 1, 12))}
          spellcheck={false}
          value={draft().lines.join('\n')}
          onInput={(e) => props.state.type({ ...draft(), lines: e.currentTarget.value.split('\n') }, t.steps.sheet)}
        />
      </label>
      <p class="quiet">{t.linesHint}</p>
      <Show when={kept()}>
        {(sheet) => (
          <button
            type="button"
            class="small"
            onClick={() =>
              props.state.edit({ ...draft(), sheetTitle: sheet().title, lines: sheet().lines }, t.steps.sheet)
            }
          >
            {t.takeSheet}
          </button>
        )}
      </Show>
      <h3>{t.sheetValues}</h3>
      <ul class="write-values">
        <For each={shown()}>
          {(line) => (
            <li>
              <Show
                when={line.fault}
                fallback={
                  <>
                    <span>{line.name}</span> <b>{line.value}</b> <small>{line.unit}</small>
                  </>
                }
              >
                {(why) => <span class="write-fault">{why()}</span>}
              </Show>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}

function Travels(props: { room: ClassRoomState; state: WriteState }) {
  const { doc } = usePage();
  const hasBar = (): boolean => doc.chain().phases.some(({ kind }) => kind === 'swing' || kind === 'catch');
  const facts = () =>
    readTicks(doc.athlete(), props.state.handed()?.kept ?? [], { hasBar: hasBar(), hasSheets: false, hasFilm: false });
  return (
    <section class="travels" aria-label={t.travels}>
      <h2>{t.travels}</h2>
      <p class="quiet">{t.travelsHint}</p>
      <TravelTicks facts={facts()} along={props.state.along()} onTick={props.state.tick} />
      <For each={wordChanges(props.state.handed(), props.state.along(), doc.chain().title, doc.athlete().name)}>
        {(text) => (
          <p class="write-caution">
            <Icon name="caution" size={16} /> {text}
          </p>
        )}
      </For>
    </section>
  );
}

function GiveOut(props: { room: ClassRoomState; state: WriteState }) {
  const [said, setSaid] = createSignal<string>();
  const [fault, setFault] = createSignal<string>();
  const [bare, setBare] = createSignal<string>();
  const begin = () => {
    setSaid(undefined);
    setFault(undefined);
    setBare(undefined);
    return props.state.worksheet();
  };
  const save = (): void => {
    const worksheet = begin();
    if (!worksheet) return;
    saveText(`worksheet-${fileName(worksheet.title)}`, props.room.classing.write(worksheet));
    setSaid(t.saved);
  };
  const copy = async (): Promise<void> => {
    const worksheet = begin();
    if (!worksheet) return;
    const base = baseAddress();
    let link: string;
    try {
      link = `${base ?? ''}#${props.room.classing.writeLink(worksheet)}`;
    } catch (error) {
      setFault(t.cannot(wordFault(error)));
      return;
    }
    try {
      await navigator.clipboard.writeText(link);
      setSaid(`${t.copied(link.length)}${base === undefined ? ` ${t.noAddress}` : ''}`);
    } catch {
      setFault(t.notCopied);
      setBare(link);
    }
  };
  const tryIt = (): void => {
    const worksheet = begin();
    if (worksheet) props.room.open(worksheet);
  };
  const isReady = (): boolean => props.state.worksheet() !== undefined;
  return (
    <section class="write-out" aria-label={t.giveOut}>
      <h2>{t.giveOut}</h2>
      <p class="write-ways">
        <button type="button" class="main" disabled={!isReady()} onClick={save}>
          {t.save}
        </button>
        <button type="button" disabled={!isReady()} onClick={() => void copy()}>
          {t.link}
        </button>
        <button type="button" disabled={!isReady()} onClick={tryIt}>
          {t.tryIt}
        </button>
      </p>
      <p role="status" class="quiet">
        {said()}
      </p>
      <Show when={fault() ?? (props.state.cannot() ? t.cannot(props.state.cannot() ?? '') : undefined)}>
        {(why) => (
          <p class="write-fault" role="alert">
            {why()}
          </p>
        )}
      </Show>
      <Show when={bare()}>
        {(link) => (
          <label class="write-field">
            <span>{t.theLink}</span>
            <textarea readonly rows={4} value={link()} onFocus={(e) => e.currentTarget.select()} />
          </label>
        )}
      </Show>
      <p class="write-lock">{t.lock}</p>
      <Show when={props.state.isKept()}>
        <p class="quiet">{t.kept}</p>
      </Show>
    </section>
  );
}
