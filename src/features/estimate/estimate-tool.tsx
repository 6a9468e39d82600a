/** Estimate: a sheet of quantities and formulas, its results as they are typed, and beside them what the full body does. */

import { createSignal, For, Index, onCleanup, onMount, Show } from 'solid-js';
import { FailedLine } from '../../app/failed-line.tsx';
import { useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { watchUndoFocus } from '../../app/undoing.ts';
import { texts } from '../../app/words.ts';
import { BodyPictures } from './body-pictures.tsx';
import { type EstimateState, useEstimateState } from './estimate-state.ts';
import { placeOf } from './ratio-line.tsx';
import { SheetActions, SheetHead } from './sheet-head.tsx';
import { SheetLine } from './sheet-line.tsx';
import { SheetSaid } from './sheet-said.tsx';
import { estimateTexts as e } from './words.ts';

/** px: a narrower bench has the columns of a tablet */
const NARROW = 1100;
const SCALE = { bench: 228, tablet: 200, phone: 200 } as const;

export function EstimateTool(props: ToolProps) {
  const shell = useShell();
  const state = useEstimateState();
  const [guide, setGuide] = createSignal(false);
  const [numbers, setNumbers] = createSignal(false);
  let list!: HTMLOListElement;
  let root!: HTMLDivElement;
  /** also where letters are typed: a field's own undo knows nothing of the other lines */
  const onKeyDown = (event: KeyboardEvent): void => {
    const isTyping = event.target instanceof HTMLElement && event.target.matches('input, textarea, select');
    if (event.key === 'f' && !isTyping && !event.ctrlKey && !event.metaKey && !event.altKey) {
      setNumbers(!numbers());
      event.preventDefault();
      event.stopPropagation();
      return;
    }
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
  const rest = (index: number): void => {
    const lines = list.querySelectorAll<HTMLLIElement>('.sheet-line');
    lines[Math.min(Math.max(index, 0), lines.length - 1)]?.focus();
  };
  const half = (): number => Math.ceil(state.knownLines() / 2);
  const isNarrow = (): boolean => props.device !== 'bench' || props.width < NARROW;
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
    <div ref={root} class="estimate" classList={{ touch: isNarrow(), numbers: numbers() }} data-device={props.device}>
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
        <SheetSaid state={state} />
        <div class="sheet-grid" classList={{ alone: !compares() }}>
          <div class="sheet-columns" aria-hidden="true" style={{ 'grid-row': String(half() + 1) }}>
            <span />
            <span>{isNarrow() && numbers() ? e.numbers : e.line}</span>
            <span>{e.numbers}</span>
            <span>{e.estimate}</span>
            <span>{e.simulated}</span>
            <span class="scale-head" style={{ width: `${SCALE[props.device]}px` }}>
              {e.ratio}
              <For each={[0.5, 1, 2]}>
                {(at) => (
                  <i style={{ left: `${placeOf(at) * 100}%` }}>{at === 1 ? e.equal : at < 1 ? e.half : e.twice}</i>
                )}
              </For>
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
                <SheetLine state={state} index={index} text={line()} moves={{ to, rest }} scale={SCALE[props.device]} />
              )}
            </Index>
          </ol>
        </div>
        <button type="button" class="small" onClick={() => to(state.addLine((state.sheet()?.lines.length ?? 1) - 1))}>
          {e.addLine}
        </button>
        <Show when={isNarrow()}>
          <button type="button" class="small" aria-pressed={numbers()} onClick={() => setNumbers(!numbers())}>
            {numbers() ? e.showFormulas : e.showNumbers}
          </button>
        </Show>
        <Show when={!wide()}>
          <SheetActions {...head} />
        </Show>
        <BodyPictures state={state} />
        <p class="sheet-keys quiet">
          <Show when={compares()}>
            <span>{e.legend}</span>
          </Show>
          <Show when={wide()}>
            <span>{e.keys}</span>
          </Show>
        </p>
        <p class="quiet">{texts.standingCaution}</p>
      </div>
    </div>
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
