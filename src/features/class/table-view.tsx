/** What a class handed in: where it is off, a strip a question, and every answer beside what the flight gives. No marks, no ranking. */
import { createMemo, createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import type { ClassOfFiles, ClassTable } from '../../../sim/index.ts';
import { saveBlob } from '../../app/file-door.ts';
import { texts } from '../../app/words.ts';
import { isolated } from '../../ui/names.ts';
import { useSize } from '../../ui/size.ts';
import { calcWidths } from './class-columns.ts';
import { ClassCards, ClassTableRows, notInTable } from './class-rows.tsx';
import { csvName, hasDays, nameOfRow } from './class-say.ts';
import { FILE_ORDER, pressHeading, sortRows } from './class-sort.ts';
import type { ClassRoomState } from './class-state.ts';
import { Points, QuestionStrip } from './strips.tsx';
import { StudentSheet } from './student-sheet.tsx';
import { makeTableState, type TableState } from './table-state.ts';
import { tableTexts as t } from './table-words.ts';
import './table.css';

/** px: a narrower page has cards */
const CARDS = 700;

export function TableView(props: { room: ClassRoomState }) {
  // the room is the same for as long as it is open
  // eslint-disable-next-line solid/reactivity
  const { classing, files } = props.room;
  const state = makeTableState(classing, files);
  return (
    <div class="class-view">
      <header class="room-head class-head">
        <h1>
          <span role="status">
            <Show when={state.table()} fallback={t.title}>
              {(now) => <Sentence table={now().table} />}
            </Show>
          </span>
        </h1>
        <Buttons room={props.room} state={state} />
      </header>
      <Said room={props.room} state={state} />
      <Show when={state.table()} keyed>
        {(now) => <Shown state={state} of={now.of} table={now.table} />}
      </Show>
      <Show when={!state.table() && state.read()}>
        {(read) => (
          <ul class="class-said">
            <For each={notInTable(read())}>
              {(one) => (
                <li>
                  {one.text} <bdi class="quiet">{isolated(one.file)}</bdi>
                </li>
              )}
            </For>
          </ul>
        )}
      </Show>
      <p class="class-foot">
        <Show when={state.table()}>
          {(now) => (
            <>
              <span>{t.legend}</span>
              <span class="class-keys">{t.keys(now().table.columns.length)}</span>
            </>
          )}
        </Show>
        <span class="standing class-standing">{texts.standingCaution}</span>
      </p>
    </div>
  );
}

function Sentence(props: { table: ClassTable }) {
  const n = (): number => props.table.rows.length;
  const far = () => {
    const q = props.table.farthest;
    return q === undefined ? undefined : { q: q + 1, ...props.table.columns[q] };
  };
  return (
    <>
      <b>{n()}</b>
      {t.read(n())}
      <b>{props.table.complete}</b>
      {t.complete}{' '}
      <Show
        when={far()}
        fallback={
          <Show when={props.table.columns.some(({ compared }) => compared > 0)}>
            <span class="class-far">{t.allNear}</span>
          </Show>
        }
      >
        {(one) => (
          <span class="class-far">
            {t.farthest} <b>{t.question(one().q)}</b>, <b>{t.near(one().near, one().compared)}</b> {t.withinTenth}
          </span>
        )}
      </Show>
    </>
  );
}

function Buttons(props: { room: ClassRoomState; state: TableState }) {
  const save = (): void => {
    const now = props.state.table();
    if (!now) return;
    const text = props.room.classing.csv(now.of, now.table);
    saveBlob(csvName(now.table.rows, now.of.worksheet.title), new Blob([text], { type: 'text/csv' }));
  };
  return (
    <p class="class-buttons">
      <button type="button" class="plain" onClick={() => props.room.show('start')}>
        {t.back}
      </button>
      <button type="button" onClick={() => props.room.pick()}>
        {t.add}
      </button>
      <Show when={props.state.table()}>
        <button type="button" onClick={save}>
          {t.csv}
        </button>
        <button type="button" onClick={() => print()}>
          {t.print}
        </button>
      </Show>
      <Show when={props.room.files().length > 0}>
        <button
          type="button"
          class="plain"
          title={t.clearHint}
          onClick={() => {
            props.room.clearFiles();
          }}
        >
          {t.clear}
        </button>
      </Show>
    </p>
  );
}

/** What is under way, what went wrong, and files of another worksheet. */
function Said(props: { room: ClassRoomState; state: TableState }) {
  return (
    <div class="class-notes">
      <Show when={props.state.work()}>
        {(work) => (
          <p class="class-work">
            <span role="status">{work().text}</span>
            <progress value={work().done} max={work().all} aria-label={work().text} />
            <button type="button" onClick={() => props.state.cancel()}>
              {t.cancel}
            </button>
          </p>
        )}
      </Show>
      <Show when={props.state.ended()}>
        {(why) => (
          <p class="class-work" role="alert">
            {why()}{' '}
            <button type="button" onClick={() => props.state.again()}>
              {t.again}
            </button>
          </p>
        )}
      </Show>
      <Show when={props.room.files().length === 0}>
        <p>
          <b>{t.empty}</b> {t.emptyHint}
        </p>
      </Show>
      <Show when={props.state.read() && !props.state.shown()}>
        <p>
          <b>{t.noneRead(props.room.files().length)}</b>
        </p>
      </Show>
      <For each={props.state.others()}>
        {(other) => (
          <p class="class-other">
            {t.of(other.handed.length)} <bdi>{isolated(other.worksheet.title)}</bdi>{' '}
            <button type="button" class="small" onClick={() => props.state.show(other)}>
              {t.show}
            </button>
          </p>
        )}
      </For>
    </div>
  );
}

function Shown(props: { state: TableState; of: ClassOfFiles; table: ClassTable }) {
  let scroller!: HTMLElement;
  const size = useSize(() => scroller);
  const [order, setOrder] = createSignal(FILE_ORDER);
  const [opened, setOpened] = createSignal<number>();
  const rows = createMemo(() => sortRows(props.table.rows, order()));
  const days = (): boolean => hasDays(props.table.rows);
  const isNarrow = (): boolean => size().width > 0 && size().width < CARDS;
  const widths = createMemo(() =>
    calcWidths(
      size().width - 40,
      props.table.columns.map(({ question }) => question.kind),
      days(),
    ),
  );
  const openedAt = (): number => rows().findIndex(({ no }) => no === opened());
  const onKey = (e: KeyboardEvent): void => {
    const n = Number(e.key);
    if (e.ctrlKey || e.metaKey || e.altKey || !(n >= 1 && n <= props.table.columns.length)) return;
    if (document.querySelector('dialog[open]')) return;
    if (e.target instanceof Element && e.target.closest('input, textarea, select')) return;
    e.preventDefault();
    e.stopPropagation();
    setOrder(pressHeading(order(), n - 1));
  };
  onMount(() => {
    window.addEventListener('keydown', onKey, true);
    onCleanup(() => window.removeEventListener('keydown', onKey, true));
  });
  const close = (): void => {
    const no = opened();
    setOpened(undefined);
    scroller.querySelector<HTMLElement>(`tr[data-no="${no}"] .row-open`)?.focus();
  };
  const rowsProps = () => ({
    table: props.table,
    rows: rows(),
    read: props.state.read() ?? { classes: [], blank: [], refused: [] },
    order: order(),
    setOrder,
    openSheet: setOpened,
  });
  return (
    <>
      <section class="class-scroll" ref={scroller} aria-label={t.table} tabIndex={-1}>
        <p class="class-title">
          <b>
            <bdi>{isolated(props.of.worksheet.title)}</bdi>
          </b>
        </p>
        <Show
          when={!isNarrow()}
          fallback={
            <>
              <div class="class-strips narrow">
                <For each={props.table.columns}>{(column, q) => <QuestionStrip column={column} index={q()} />}</For>
              </div>
              <Points columns={props.table.columns} />
              <ClassCards {...rowsProps()} />
            </>
          }
        >
          <div class="class-wide" style={{ '--all': `${widths().all}px` }}>
            <div
              class="class-strips"
              style={{
                'grid-template-columns': [
                  `${widths().shares[0] + widths().shares[1]}%`,
                  ...widths()
                    .shares.slice(2)
                    .map((share) => `${share}%`),
                ].join(' '),
              }}
            >
              <p class="strips-head">
                <b>{t.strips}</b>
                <span>{t.stripsHint}</span>
                <span>{t.stay}</span>
              </p>
              <For each={props.table.columns}>{(column, q) => <QuestionStrip column={column} index={q()} />}</For>
            </div>
            <Points columns={props.table.columns} />
            <ClassTableRows {...rowsProps()} shares={widths().shares} />
          </div>
        </Show>
        <InFull table={props.table} />
      </section>
      <Show when={rows()[openedAt()]}>
        {(row) => (
          <StudentSheet
            row={row()}
            columns={props.table.columns}
            hasDays={days()}
            step={{
              ...(openedAt() > 0 ? { before: () => setOpened(rows()[openedAt() - 1].no) } : {}),
              ...(openedAt() < rows().length - 1 ? { after: () => setOpened(rows()[openedAt() + 1].no) } : {}),
            }}
            onClose={close}
          />
        )}
      </Show>
    </>
  );
}

/** Answers in words, whole: for who reads them aloud. */
function InFull(props: { table: ClassTable }) {
  const asked = () =>
    props.table.columns.flatMap(({ question }, q) => {
      const said = props.table.rows.flatMap((row) => {
        const cell = row.cells[q];
        return cell.kind === 'words' ? [{ row, text: cell.text }] : [];
      });
      return question.kind === 'words' && said.length > 0 ? [{ q, ask: question.ask, said }] : [];
    });
  return (
    <For each={asked()}>
      {({ q, ask, said }) => (
        <section class="class-words" aria-label={t.inFull(q + 1, ask)}>
          <h2>{t.inFull(q + 1, ask)}</h2>
          <dl>
            <For each={said}>
              {({ row, text }) => (
                <div>
                  <dt>
                    <bdi>{nameOfRow(row)}</bdi>
                  </dt>
                  <dd>
                    <bdi>{text}</bdi>
                  </dd>
                </div>
              )}
            </For>
          </dl>
        </section>
      )}
    </For>
  );
}
