/** The answers of a class in rows: as a table, and on a phone as a card a student. */
import { createSignal, For, Show } from 'solid-js';
import type { ClassCell, ClassFiles, ClassRow, ClassTable, Question } from '../../../sim/index.ts';
import { isolated } from '../../ui/names.ts';
import { hasDays, nameOfRow, noteOf, valueIn, wordTime } from './class-say.ts';
import { pressHeading, type RowOrder, type SortBy } from './class-sort.ts';
import { useSome } from './some-rows.ts';
import { tableTexts as t } from './table-words.ts';

interface RowsProps {
  readonly table: ClassTable;
  readonly rows: readonly ClassRow[];
  readonly read: ClassFiles;
  readonly order: RowOrder;
  setOrder(order: RowOrder): void;
  openSheet(no: number): void;
}

const unitOf = (q: Question): string => (q.kind === 'number' ? q.unit || t.plainNumber : t.inWords);

const textOf = (cell: ClassCell, question: Question): string =>
  cell.kind === 'none'
    ? ''
    : cell.kind === 'number' && question.kind === 'number'
      ? valueIn(cell, question.unit)
      : cell.text;

function Cell(props: { cell: ClassCell; question: Question }) {
  const note = (): string => noteOf(props.cell);
  const isOff = (): boolean => props.cell.kind === 'number' && props.cell.isOff;
  const text = (): string => textOf(props.cell, props.question);
  return (
    <Show
      when={props.cell.kind === 'open' || (props.cell.kind === 'none' && props.question.kind === 'number')}
      fallback={
        <span class="cell" classList={{ off: isOff(), words: props.cell.kind === 'words' }}>
          <bdi title={props.cell.kind === 'unread' ? props.cell.reason : text()}>{text()}</bdi>
          <Show when={note()}>
            <small>{note()}</small>
          </Show>
        </span>
      }
    >
      <span class="cell quiet">{t.notLocked}</span>
    </Show>
  );
}

const Twice = (props: { row: ClassRow }) => (
  <Show when={props.row.isTwice}>
    <small class="twice" title={t.twice}>
      {t.twice}
    </small>
  </Show>
);

export function ClassTableRows(props: RowsProps & { shares: readonly number[] }) {
  const rows = useSome(props);
  const days = (): boolean => hasDays(props.rows);
  const sorted = (by: SortBy): 'ascending' | 'descending' | 'none' =>
    props.order.by === by ? (props.order.isDown ? 'descending' : 'ascending') : 'none';
  const Heading = (head: { by: SortBy; text: string; label?: string; class?: string }) => (
    <th scope="col" aria-sort={sorted(head.by)} class={head.class}>
      <button
        type="button"
        aria-label={head.label}
        title={head.label ? `${t.sortBy}: ${head.label}` : `${t.sortBy}: ${head.text}`}
        onClick={() => props.setOrder(pressHeading(props.order, head.by))}
      >
        {head.text}
        <Show when={props.order.by === head.by}>
          <svg class="sort-mark" classList={{ down: props.order.isDown }} viewBox="0 0 8 6" aria-hidden="true">
            <path d="M0 6 L4 0 L8 6 Z" />
          </svg>
        </Show>
      </button>
    </th>
  );
  const [at, setAt] = createSignal(0);
  let body!: HTMLTableSectionElement;
  const onKeyDown = (e: KeyboardEvent): void => {
    const step = { ArrowUp: -1, ArrowDown: 1, Home: -props.rows.length, End: props.rows.length }[e.key];
    if (step === undefined || e.ctrlKey || e.metaKey || e.altKey) return;
    e.preventDefault();
    const next = Math.min(Math.max(at() + step, 0), rows().length - 1);
    setAt(next);
    body.querySelectorAll<HTMLButtonElement>('.row-open')[next]?.focus();
  };
  return (
    <table class="class-table">
      <caption class="spoken">{t.table}</caption>
      <colgroup>
        <For each={props.shares}>{(share) => <col style={{ width: `${share}%` }} />}</For>
      </colgroup>
      <thead>
        <tr>
          <Heading by="no" text={t.no} />
          <Heading by="name" text={t.name} />
          <For each={props.table.columns}>
            {({ question }, q) => (
              <Heading by={q()} text={unitOf(question)} label={t.sortQuestion(q() + 1, question.ask)} />
            )}
          </For>
          <Heading by="locked" text={t.locked} class="at-end" />
        </tr>
      </thead>
      <tbody ref={body} onKeyDown={onKeyDown}>
        <For each={rows()}>
          {(row, r) => (
            <tr data-no={row.no}>
              <td class="quiet">{row.no}</td>
              <th scope="row">
                <button
                  type="button"
                  class="row-open"
                  tabIndex={r() === Math.min(at(), rows().length - 1) ? 0 : -1}
                  title={isolated(row.worksheet.student?.name ?? row.file)}
                  onFocus={() => setAt(r())}
                  onClick={() => props.openSheet(row.no)}
                >
                  <bdi>{nameOfRow(row)}</bdi>
                </button>
                <Twice row={row} />
              </th>
              <For each={row.cells}>
                {(cell, q) => (
                  <td>
                    <Cell cell={cell} question={props.table.columns[q()].question} />
                  </td>
                )}
              </For>
              <td class="at-end quiet">{row.lockedAt ? wordTime(row.lockedAt, days()) : ''}</td>
            </tr>
          )}
        </For>
        <For each={notInTable(props.read)}>
          {(one) => (
            <tr class="not-read">
              <td class="quiet">{one.no}</td>
              <td colSpan={props.table.columns.length + 2}>
                {one.text} <bdi class="quiet">{isolated(one.file)}</bdi>
              </td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}

/** Blank ones and what is no worksheet, in the order they were given. */
export const notInTable = ({ blank, refused }: ClassFiles) =>
  [
    ...blank.map(({ no, file }) => ({ no, file, text: t.blank(no) })),
    ...refused.map(({ no, file, reason, isOther }) => ({
      no,
      file,
      text: isOther ? t.other(no, reason) : t.refused(no, reason),
    })),
  ].sort((a, b) => a.no - b.no);

export function ClassCards(props: RowsProps) {
  const rows = useSome(props);
  const days = (): boolean => hasDays(props.rows);
  return (
    <>
      <label class="class-order">
        {t.sortBy}{' '}
        <select
          value={String(props.order.by)}
          onChange={({ currentTarget: { value } }) =>
            props.setOrder({ by: /^\d+$/.test(value) ? Number(value) : (value as SortBy), isDown: false })
          }
        >
          <option value="no">{t.no}</option>
          <option value="name">{t.name}</option>
          <For each={props.table.columns}>
            {({ question }, q) => <option value={String(q())}>{t.sortQuestion(q() + 1, question.ask)}</option>}
          </For>
          <option value="locked">{t.locked}</option>
        </select>
      </label>
      <ul class="class-cards" aria-label={t.table}>
        <For each={rows()}>
          {(row) => (
            <li>
              <h3>
                <button type="button" class="row-open" onClick={() => props.openSheet(row.no)}>
                  <span class="quiet">{row.no}</span> <bdi>{nameOfRow(row)}</bdi>
                </button>
                <Twice row={row} />
                <span class="quiet">{row.lockedAt ? wordTime(row.lockedAt, days()) : ''}</span>
              </h3>
              <dl>
                <For each={row.cells}>
                  {(cell, q) => {
                    const question = () => props.table.columns[q()].question;
                    return (
                      <div classList={{ wide: cell.kind === 'words' }}>
                        <dt title={question().ask}>{q() + 1}</dt>
                        <dd>
                          <Cell cell={cell} question={question()} />
                        </dd>
                      </div>
                    );
                  }}
                </For>
              </dl>
            </li>
          )}
        </For>
      </ul>
      <For each={notInTable(props.read)}>
        {(one) => (
          <p class="quiet">
            {one.text} <bdi>{isolated(one.file)}</bdi>
          </p>
        )}
      </For>
    </>
  );
}
