/** Ask on a laptop: what is wanted in the headline's place, what may change at the left of the flight, the picked answer at its right; under the floor the rows. */
import { createMemo, createSignal, onCleanup, onMount, Show } from 'solid-js';
import { Portal } from 'solid-js/web';
import { useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { AnswerTable } from './answer-table.tsx';
import type { AskState } from './ask-state.ts';
import { Forgives } from './forgives.tsx';
import type { MapState } from './map-state.ts';
import { countLines, RulerSpans, SpanList } from './may-change.tsx';
import { PickedAnswer } from './picked-answer.tsx';
import { SearchButtons } from './search-buttons.tsx';
import type { StudyState } from './study-state.ts';
import { WantedFill, WantedLine } from './wanted-line.tsx';
import { askTexts as t } from './words.ts';

const TILE = 30;
const NAME = 16;
const LINE = 26;
const HEADS = 34;
const ROW = 38;
const LEAST_FOOT = 200;
/** answers, foot */
const PARTS = 2;

export function WideAsk(
  props: ToolProps & { readonly ask: AskState; readonly study: StudyState; readonly map: MapState },
) {
  const { places } = useShell();
  // a part a task, so that opening never holds the page for long
  const [part, setPart] = createSignal(0);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const next = (): void => {
    timer = setTimeout(() => {
      if (setPart((n) => n + 1) < PARTS) next();
    });
  };
  onMount(next);
  onCleanup(() => clearTimeout(timer));
  const lines = createMemo(() => countLines(props.ask, props.axis));
  const own = (): number => TILE + NAME + 14 + lines() * LINE;
  const rows = (): number => HEADS + own() + (props.ask.found()?.list.length ?? 0) * ROW;
  const right = (): number => props.width - props.timeLeft - props.axis.width;
  const mayChange = () => (
    <section class="ask ask-before" aria-label={t.mayChange} data-tool-part="ask">
      <h2 title={t.mayHint}>{t.mayChange}</h2>
      <SpanList state={props.ask} width={176} />
      <h2>{t.fillTitle}</h2>
      <WantedFill state={props.ask} />
    </section>
  );
  const picked = () => (
    <div class="ask ask-cut" data-tool-part="ask">
      <PickedAnswer state={props.ask} />
    </div>
  );
  return (
    <div class="ask-wide">
      <Show when={places.headline()}>
        {(mount) => (
          <Portal mount={mount()}>
            <div class="ask ask-headline" data-tool-part="ask">
              <WantedLine state={props.ask} />
              <SearchButtons state={props.ask} />
            </div>
          </Portal>
        )}
      </Show>
      <Show when={places.before()}>{(mount) => <Portal mount={mount()}>{mayChange()}</Portal>}</Show>
      <Show when={places.cut()}>{(mount) => <Portal mount={mount()}>{picked()}</Portal>}</Show>
      <Show when={props.isTall}>
        <div class="ask-parts">
          {mayChange()}
          {picked()}
        </div>
      </Show>
      <Show when={part() >= 1}>
        <AnswerTable
          state={props.ask}
          study={props.study}
          axis={props.axis}
          left={props.timeLeft}
          ownHeight={own()}
          own={
            <>
              <span class="own-shapes" style={{ height: `${TILE + NAME}px` }}>
                {props.shapes?.({ axis: props.axis, tile: TILE })}
              </span>
              <RulerSpans state={props.ask} axis={props.axis} left={0} row={LINE} />
            </>
          }
        />
      </Show>
      <Show when={part() >= 2}>
        <Forgives
          ask={props.ask}
          study={props.study}
          map={props.map}
          left={props.timeLeft}
          middle={props.axis.width}
          right={right()}
          height={Math.max(LEAST_FOOT, props.height - rows())}
        />
      </Show>
    </div>
  );
}
