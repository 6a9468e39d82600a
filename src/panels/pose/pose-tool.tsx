/**
 * The pose tool. On a laptop the posing stage stands above the floor, where front and side were, and the rest in the cut's
 * place; on tablet and phone all of it is one sheet.
 */
import { createSignal, For, type JSX, Match, Show, Switch } from 'solid-js';
import { Portal } from 'solid-js/web';
import { poseTexts } from '../../texts/pose.ts';
import { RIGHT } from '../bench-columns.ts';
import { useSize } from '../size.ts';
import type { ToolProps } from '../tools/tool.ts';
import { AngleList } from './angle-list.tsx';
import { Catalogue } from './catalogue.tsx';
import { getHand } from './hand.ts';
import { HeldShape } from './held-shape.tsx';
import { PosingStage } from './posing-stage.tsx';

const TABS = ['shapes', 'angles', 'held'] as const;
type Tab = (typeof TABS)[number];
const SWITCHES = 40;

export function PoseTool(props: ToolProps) {
  const [tab, setTab] = createSignal<Tab>('shapes');
  const isTouch = (): boolean => props.device !== 'bench';
  const aside = (): number => (props.device === 'tablet' ? 420 : 0);
  const onTabKey = (e: KeyboardEvent): void => {
    const way = e.key === 'ArrowRight' ? 1 : e.key === 'ArrowLeft' ? -1 : 0;
    if (way === 0) return;
    e.preventDefault();
    e.stopPropagation();
    const next = TABS[(TABS.indexOf(tab()) + way + TABS.length) % TABS.length];
    setTab(next);
    document.getElementById(`pose-tab-${next}`)?.focus();
  };
  const panel = (): JSX.Element => (
    <>
      <div class="pose-tabs" role="tablist" aria-label={poseTexts.tabsLabel} onKeyDown={onTabKey}>
        <For each={TABS}>
          {(name) => (
            <button
              type="button"
              role="tab"
              id={`pose-tab-${name}`}
              aria-selected={tab() === name}
              aria-controls="pose-panel"
              tabIndex={tab() === name ? 0 : -1}
              onClick={() => setTab(name)}
            >
              {poseTexts.tabs[name]}
            </button>
          )}
        </For>
      </div>
      <div class="pose-panel" role="tabpanel" id="pose-panel" aria-labelledby={`pose-tab-${tab()}`}>
        <Switch>
          <Match when={tab() === 'shapes'}>
            <Catalogue bench={props.bench} axis={props.axis} device={props.device} />
          </Match>
          <Match when={tab() === 'angles'}>
            <AngleList bench={props.bench} />
          </Match>
          <Match when={tab() === 'held'}>
            <HeldShape bench={props.bench} />
          </Match>
        </Switch>
      </div>
    </>
  );
  return (
    <div class="pose" classList={{ [`on-${props.device}`]: true }} style={{ height: `${props.height}px` }}>
      <Show
        when={isTouch()}
        fallback={
          <>
            <AirStage {...props} />
            <FloorSwitches {...props} />
            {panel()}
          </>
        }
      >
        <div class="pose-left" style={{ width: aside() ? `${aside()}px` : '100%' }}>
          <PosingStage
            bench={props.bench}
            touch
            width={aside() || props.width}
            height={aside() ? props.height - SWITCHES - 8 : Math.round(Math.min(props.height * 0.46, 210))}
          />
          <Switches bench={props.bench} />
        </div>
        <div class="pose-right">{panel()}</div>
      </Show>
    </div>
  );
}

/** The posing stage in the place of front and side, above the floor of a laptop. */
function AirStage(props: ToolProps) {
  const air = document.querySelector<HTMLElement>('.bench .air') ?? document.body;
  const size = useSize(() => air);
  return (
    <Portal mount={air}>
      <Show when={size().height > 0}>
        <div class="posing-air">
          <PosingStage bench={props.bench} width={RIGHT - 8} height={size().height} />
        </div>
      </Show>
    </Portal>
  );
}

/** The switches on the floor, under the posing stage. */
function FloorSwitches(props: ToolProps) {
  const floor = document.querySelector<HTMLElement>('.bench .floor') ?? document.body;
  return (
    <Portal mount={floor}>
      <div class="posing-floor" style={{ width: `${RIGHT - 8}px` }}>
        <Switches bench={props.bench} />
      </div>
    </Portal>
  );
}

function Switches(props: { bench: ToolProps['bench'] }) {
  const hand = getHand(props.bench);
  return (
    <fieldset class="pose-switches">
      <legend class="spoken">{poseTexts.switches}</legend>
      <span class="choice" title={poseTexts.sidesHint}>
        <For each={['both', 'one'] as const}>
          {(name) => (
            <button type="button" aria-pressed={hand.sides() === name} onClick={() => hand.setSides(name)}>
              {poseTexts.sides[name]}
            </button>
          )}
        </For>
      </span>
      <span class="choice" title={poseTexts.scopeHint}>
        <For each={['key', 'shape'] as const}>
          {(name) => (
            <button
              type="button"
              aria-pressed={(hand.heldSpan() ? hand.scope() : 'key') === name}
              disabled={name === 'shape' && !hand.heldSpan()}
              onClick={() => hand.setScope(name)}
            >
              {poseTexts.scope[name]}
            </button>
          )}
        </For>
      </span>
    </fieldset>
  );
}
