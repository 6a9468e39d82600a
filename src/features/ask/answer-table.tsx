/** The skill as it is and its answers, as rows on the page's ruler with their costs in columns. */
import { createMemo, For, type JSX, Show } from 'solid-js';
import { useFlight } from '../../app/page.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { type CostRow, costColumns, rowOf } from './answer-costs.ts';
import { AnswerRow, CostHead, Costs } from './answer-row.tsx';
import type { AskState } from './ask-state.ts';
import { nameInput } from './ask-words.ts';
import type { StudyState } from './study-state.ts';
import { askTexts as t } from './words.ts';

export function AnswerTable(props: {
  state: AskState;
  study: StudyState;
  axis: TimeAxis;
  /** px of the column of names; 0: names are over their rows */
  left: number;
  /** the shapes of the skill as it is, and what of them may change */
  own?: JSX.Element;
  ownHeight?: number;
}) {
  const flight = useFlight();
  const found = () => props.state.found();
  const ids = (): readonly string[] => (found()?.chosen ?? props.state.chosen()).map((c) => c.id);
  const columns = createMemo(() => {
    const open = props.state.skill();
    const named = ids().flatMap((id) => {
      const input = props.state.inputOf(id);
      return open && input ? [{ input, name: nameInput(id, flight.spans(), open.spec) }] : [];
    });
    return costColumns(named, (angle) => wordJoint(flight.result().flight.body.angles[angle]?.name ?? ''));
  });
  const own = createMemo<CostRow | undefined>(() => {
    const [engine, open] = [props.state.asking(), props.state.skill()];
    if (!engine || !open) return undefined;
    const margin = (props.state.stale() ? undefined : found()?.answer.ownMargin) ?? props.study.ownShare();
    return { cost: engine.costOf(open), margin, values: new Map() };
  });
  return (
    <div class="answer-table" role="radiogroup" aria-label={t.answersTitle}>
      <div class="answer-heads" classList={{ stacked: props.left === 0 }}>
        <h3 style={{ width: `${props.left + props.axis.width}px` }}>{t.shapesOfEach}</h3>
        <Show when={props.left > 0}>
          <CostHead columns={columns()} />
        </Show>
      </div>
      <div
        class="answer own"
        classList={{ picked: props.state.picked() < 0, stacked: props.left === 0 }}
        style={props.ownHeight ? { height: `${props.ownHeight}px` } : {}}
      >
        <label class="answer-name" style={props.left > 0 ? { width: `${props.left}px` } : {}}>
          <input type="radio" name="answer" checked={props.state.picked() < 0} onChange={() => props.state.pick(-1)} />
          <span class="answer-mark">A</span>
          <span class="answer-words">{t.asItIs}</span>
        </label>
        <span class="answer-shapes" style={{ width: `${props.axis.width}px` }}>
          {props.own}
        </span>
        <Show when={own()}>{(row) => <Costs columns={columns()} row={row()} />}</Show>
      </div>
      <For each={found()?.list ?? []}>
        {(one, i) => (
          <AnswerRow
            state={props.state}
            one={one}
            index={i()}
            axis={props.axis}
            left={props.left}
            columns={columns()}
            row={rowOf(one, ids())}
          />
        )}
      </For>
    </div>
  );
}
