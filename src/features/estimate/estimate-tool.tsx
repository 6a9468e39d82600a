/** Estimate: a sheet of quantities and formulas, its results as they are typed, and beside them what the full body does. */

import { createSignal, For, Index, onCleanup, onMount, Show } from 'solid-js';
import { FailedLine } from '../../app/failed-line.tsx';
import { useCursor, useFlight, useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { watchUndoFocus } from '../../app/undoing.ts';
import { texts } from '../../app/words.ts';
import { type EstimateState, useEstimateState } from './estimate-state.ts';
import { SheetActions, SheetHead } from './sheet-head.tsx';
import { SheetLine } from './sheet-line.tsx';
import { estimateTexts as e } from './words.ts';

/** px: a narrower bench has the columns of a tablet */
const NARROW = 1100;
const SCALE = { bench: 184, tablet: 150, phone: 150 } as const;

export function EstimateTool(props: ToolProps) {
  const shell = useShell();
  const state = useEstimateState();
  const [guide, setGuide] = createSignal(false);
  let list!: HTMLOListElement;
  let root!: HTMLDivElement;
  /** also where letters are typed: a field's own undo knows nothing of the other lines */
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || !(event.ctrlKey || event.metaKey) || event.altKey || !/^[zy]$/i.test(event.key))
      return;
    event.preventDefault();
    if (/y/i.test(event.key) || event.shiftKey) state.desk.redo();
    else state.desk.undo();
  };
  onMount(() => {
    root.addEventListener('keydown', onKeyDown);
    root.addEventListener('focusout', state.desk.settle);
    onCleanup(watchUndoFocus(root, (has) => shell.takeUndo(has ? state.desk : undefined)));
    onCleanup(() => shell.takeUndo(undefined));
  });
  const to = (index: number): void => {
    const fields = list.querySelectorAll<HTMLTextAreaElement>('.line-text');
    fields[Math.min(Math.max(index, 0), fields.length - 1)]?.focus();
  };
  const wide = (): boolean => props.device === 'bench';
  const head = {
    state,
    get guide() {
      return guide();
    },
    onGuide: () => setGuide(!guide()),
  };
  const compares = (): boolean => (state.sheet()?.lines ?? []).some((text) => /\bvs\b/.test(text.split('#')[0]));
  const faults = (): number => state.rows().filter((r) => r.result.kind === 'fault').length;
  return (
    <div
      ref={root}
      class="estimate"
      classList={{ touch: props.device !== 'bench' || props.width < NARROW }}
      data-device={props.device}
    >
      <SheetHead {...head} actions={wide()} />
      <div class="estimate-body" tabIndex={-1}>
        <Show when={guide()}>
          <Guide state={state} />
        </Show>
        <Show when={state.sheet()?.lesson}>{(lesson) => <p class="sheet-lesson">{lesson()}</p>}</Show>
        <Show when={!state.desk.isKept()}>
          <p role="alert">{e.notKept}</p>
        </Show>
        <Show when={state.failed()}>
          {(reason) => <FailedLine again={state.again}>{e.failed(reason())}</FailedLine>}
        </Show>
        <p class="spoken" role="status">
          {state.stale() ? '' : faults() > 0 ? e.faults(faults()) : ''}
        </p>
        <div class="sheet-grid" classList={{ alone: !compares() }}>
          <div class="sheet-columns" aria-hidden="true">
            <span>{e.lines}</span>
            <span>{e.formulas}</span>
            <span>{e.estimate}</span>
            <span>{e.simulated}</span>
            <span class="scale-head" style={{ width: `${SCALE[props.device]}px` }}>
              {e.ratio}
              <i class="tick-half">{e.half}</i>
              <i class="tick-equal">{e.equal}</i>
              <i class="tick-twice">{e.twice}</i>
            </span>
            <span>{e.why}</span>
          </div>
          <ol
            class="sheet-lines"
            ref={list}
            aria-label={e.lines}
            aria-busy={state.stale()}
            classList={{ stale: state.stale() }}
          >
            <Index each={state.sheet()?.lines ?? []}>
              {(line, index) => (
                <SheetLine state={state} index={index} text={line()} moves={{ to }} scale={SCALE[props.device]} />
              )}
            </Index>
          </ol>
        </div>
        <button type="button" class="small" onClick={() => to(state.addLine((state.sheet()?.lines.length ?? 1) - 1))}>
          {e.addLine}
        </button>
        <Show when={!wide()}>
          <SheetActions {...head} />
        </Show>
        <Bodies state={state} />
        <p class="quiet">{texts.standingCaution}</p>
      </div>
    </div>
  );
}

/** The plain bodies of the sheet: a way to their instant, and whether they stand over the athlete. */
function Bodies(props: { state: EstimateState }) {
  const flight = useFlight();
  const cursor = useCursor();
  const drawings = () =>
    props.state
      .rows()
      .flatMap((row) => (row.result.kind === 'drawing' ? [{ ...row.result, size: row.size ?? '' }] : []));
  const timeOf = (at: string): number | undefined => {
    const { apex, duration } = flight.result().outline;
    if (at === 'apex') return apex;
    if (at === 'touchdown') return duration;
    if (/^take-?off$/.test(at)) return 0;
    const typed = /^(\d+(?:\.\d+)?) ?(s|%)$/.exec(at);
    return typed
      ? Math.min(duration, typed[2] === 's' ? Number(typed[1]) : (duration * Number(typed[1])) / 100)
      : undefined;
  };
  return (
    <Show when={drawings().length > 0}>
      <section class="sheet-bodies" aria-label={e.bodies}>
        <h3>{e.bodies}</h3>
        <label class="body-show">
          <input
            type="checkbox"
            checked={props.state.drawn()}
            onChange={(event) => props.state.setDrawn(event.currentTarget.checked)}
          />
          {e.show}
        </label>
        <For each={drawings()}>
          {(one) => (
            <span class="body-one">
              <b>{e.bodySize(one.body.kind, one.size)}</b> <span class="quiet">{e.bodyFor(one.of)}</span>
              <Show when={timeOf(one.at) !== undefined}>
                <button
                  type="button"
                  class="small"
                  aria-label={`${e.goTo(one.at)}: ${e.bodyFor(one.of)}`}
                  onClick={() => {
                    cursor.play.pause();
                    cursor.set(timeOf(one.at) ?? 0);
                  }}
                >
                  {e.goTo(one.at)}
                </button>
              </Show>
            </span>
          )}
        </For>
        <p class="quiet">{e.bodiesHint}</p>
      </section>
    </Show>
  );
}

function Guide(props: { state: EstimateState }) {
  return (
    <section class="sheet-guide" aria-label={e.help}>
      <dl>
        <For each={e.guide}>
          {([what, example]) => (
            <div>
              <dt>{what}</dt>
              <dd>
                <code>{example}</code>
              </dd>
            </div>
          )}
        </For>
      </dl>
      <p>
        <b>{e.guideReadouts}</b> {(props.state.engine()?.readouts ?? []).join(', ')}. {e.guideTimes}
      </p>
    </section>
  );
}
