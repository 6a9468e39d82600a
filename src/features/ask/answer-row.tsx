/** An answer as a row on the ruler: what it does, its shapes against those of the skill as it is, and what it costs. */
import { createMemo, For, Show } from 'solid-js';
import type { Solution } from '../../../sim/index.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { CostRow, costColumns } from './answer-costs.ts';
import { heldSpans, movedEdges } from './answer-shapes.ts';
import type { AskState } from './ask-state.ts';
import { askTexts as t } from './words.ts';

type Columns = ReturnType<typeof costColumns>;

export function AnswerRow(props: {
  state: AskState;
  one: Solution;
  index: number;
  axis: TimeAxis;
  /** px of the column of names; 0: the name is over the ruler */
  left: number;
  columns: Columns;
  row: CostRow;
}) {
  const isAnswer = (): boolean => (props.state.found()?.answer.solutions.length ?? 0) > 0;
  const isPicked = (): boolean => props.state.picked() === props.index;
  const clauses = createMemo(() => props.state.clausesOf(props.one));
  /** what is seen of it on the ruler, or else what comes first */
  const short = (): string => widest(clauses()) ?? clauses()[0] ?? t.asNow;
  return (
    <label
      class="answer"
      classList={{ picked: isPicked(), stale: props.state.stale(), stacked: props.left === 0 }}
      data-answer={props.index + 1}
    >
      <span class="answer-name" style={props.left > 0 ? { width: `${props.left}px` } : {}}>
        <input
          type="radio"
          name="answer"
          disabled={props.state.stale()}
          checked={isPicked()}
          onChange={() => props.state.pick(props.index)}
        />
        <span class="answer-mark round">{isAnswer() ? props.index + 1 : '~'}</span>
        <span class="answer-words">
          <span class="spoken">{isAnswer() ? t.answer(String(props.index + 1)) : t.nearest}: </span>
          {short()}
          <Show when={isAnswer() && props.one.held === false}>
            <b> {t.notHeldShort}</b>
          </Show>
        </span>
      </span>
      <AnswerShapes one={props.one} axis={props.axis} />
      <Costs columns={props.columns} row={props.row} />
    </label>
  );
}

/** Of the clauses that tell a time the one that tells the most. */
function widest(clauses: readonly string[]): string | undefined {
  const seconds = (clause: string): number => Number(/([\d.]+) s /.exec(clause)?.[1] ?? 0);
  return clauses.filter((c) => seconds(c) > 0).sort((a, b) => seconds(b) - seconds(a))[0];
}

/** px under which a piece has no room for its word */
const WORD = 46;
/** px of half a word, and of the air beside the plumb line */
const HALF = 24;

function AnswerShapes(props: { one: Solution; axis: TimeAxis }) {
  const flight = useFlight();
  const cursor = useCursor();
  const spans = createMemo(() => heldSpans(props.one.spec, props.one.events));
  const end = (): number => props.one.events.touchdown;
  const moved = createMemo(() => movedEdges(flight.spans(), spans(), props.axis.duration));
  const x = (s: number): number => xOf(props.axis, Math.min(Math.max(s, 0), end()));
  const pieces = createMemo(() =>
    spans().flatMap((span, i) => {
      const before = spans()[i - 1];
      const word = flight.spans()[i]?.word ?? '';
      return [
        ...(before ? [{ held: false, left: x(before.to), right: x(span.from), word }] : []),
        { held: true, left: x(span.from), right: x(span.to), word: t.held },
      ].filter((piece) => piece.right - piece.left > 0.5);
    }),
  );
  const plumb = (): number => xOf(props.axis, cursor.at());
  const aside = ({ left, right }: { left: number; right: number }) => {
    const by = plumb() - (left + right) / 2;
    const isNear = Math.abs(by) < HALF;
    return { 'aside-left': isNear && by >= 0, 'aside-right': isNear && by < 0 };
  };
  return (
    <span class="answer-shapes" aria-hidden="true" style={{ width: `${props.axis.width}px` }}>
      <For each={pieces()}>
        {(piece) => (
          <span
            class={piece.held ? 'answer-held' : 'answer-move'}
            classList={aside(piece)}
            style={{ left: `${piece.left}px`, width: `${piece.right - piece.left}px` }}
          >
            {piece.right - piece.left > WORD ? piece.word : ''}
          </span>
        )}
      </For>
      <For each={moved()}>{(s) => <i class="answer-edge" style={{ left: `${xOf(props.axis, s)}px` }} />}</For>
    </span>
  );
}

/** Each under the head of its column; read out with the name of it. */
export function Costs(props: { columns: Columns; row: CostRow }) {
  return (
    <span class="answer-costs" style={{ '--columns': props.columns.length }}>
      <For each={props.columns}>
        {(column) => {
          const cell = () => column.cell(props.row);
          return (
            <span class="cost" classList={{ main: column.id === 'margin' }} title={cell().hint ?? column.hint}>
              <span class="spoken">
                {column.title}, {column.unit}:{' '}
              </span>
              <span class="cost-head" aria-hidden="true">
                {column.title} {column.unit}
              </span>
              <b>{cell().text}</b>
            </span>
          );
        }}
      </For>
    </span>
  );
}

export function CostHead(props: { columns: Columns }) {
  return (
    <span class="answer-costs cost-heads" style={{ '--columns': props.columns.length }} aria-hidden="true">
      <For each={props.columns}>
        {(column) => (
          <span class="cost" title={column.hint}>
            {column.title} <span class="quiet">{column.unit}</span>
          </span>
        )}
      </For>
    </span>
  );
}
