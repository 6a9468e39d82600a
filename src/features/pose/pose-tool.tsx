/**
 * The athlete held large, with all shapes and all angles. On a laptop the athlete has the air, over a strip of the flight, and
 * the rest is in the cut's place; on tablet and phone all of it is one sheet.
 */

import { createSignal, For, type JSX, Match, Show, Switch, untrack } from 'solid-js';
import { Portal } from 'solid-js/web';
import { FLIGHT_STRIP, LEFT } from '../../app/bench-columns.ts';
import type { ToolProps } from '../../app/tool.ts';
import { ChoiceButtons } from '../../ui/choice.tsx';
import { inNextTask } from '../../ui/frame.ts';
import { useSize } from '../../ui/size.ts';
import { stepTab } from '../../ui/tabs.tsx';
import { AngleList } from './angle-list.tsx';
import { Catalogue } from './catalogue.tsx';
import { FigureHandle } from './figure-handle.tsx';
import { useHand } from './hand.ts';
import { HeldShape } from './held-shape.tsx';
import { POSE_TABS, usePoseTab } from './pose-tab.ts';
import { poseTexts } from './words.ts';

/** px across, for both pictures */
const TABLET_STAGE = 420;

export function PoseTool(props: ToolProps) {
  const [tab, setTab] = usePoseTab();
  const onTabKey = (e: KeyboardEvent): void => stepTab(e, 'pose-tab', POSE_TABS, tab(), setTab);
  const panel = (): JSX.Element => (
    <>
      <div class="pose-tabs" role="tablist" aria-label={poseTexts.tabsLabel} onKeyDown={onTabKey}>
        <For each={POSE_TABS}>
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
            <Catalogue axis={props.axis} device={props.device} />
          </Match>
          <Match when={tab() === 'angles'}>
            <AngleList />
          </Match>
          <Match when={tab() === 'held'}>
            <HeldShape />
          </Match>
        </Switch>
      </div>
    </>
  );
  return (
    <div class="pose" classList={{ [`on-${props.device}`]: true }} style={{ height: `${props.height}px` }}>
      <Switch>
        <Match when={props.device === 'tablet'}>
          <InPlace of=".tool-head">
            <Switches />
          </InPlace>
          <FigureHandle touch both width={TABLET_STAGE} height={props.height} />
        </Match>
        <Match when={props.device === 'phone'}>
          <AirStage air=".phone .air" touch />
          <Switches />
        </Match>
        <Match when={props.device === 'bench'}>
          <AirStage air=".bench .air" left={LEFT} under={FLIGHT_STRIP} />
        </Match>
      </Switch>
      <div class="pose-right">
        <Show when={props.device === 'bench'}>
          <Switches />
        </Show>
        {panel()}
      </div>
    </div>
  );
}

/** In another part of the page, for as long as the tool is open. */
function InPlace(props: { of: string; children: JSX.Element }) {
  // the part is there before the tool is, and longer
  const place = untrack(() => document.querySelector(props.of)) ?? document.body;
  return <Portal mount={place}>{props.children}</Portal>;
}

/** The athlete above the floor, across all of it but `left` px and a strip of `under` px over the floor. */
function AirStage(props: { air: string; left?: number; under?: number; touch?: boolean }) {
  const air = untrack(() => document.querySelector<HTMLElement>(props.air)) ?? document.body;
  const size = useSize(() => air);
  const [isNext, setNext] = createSignal(false);
  // how large the athlete is drawn is measured over all shapes of the flight: enough for a task of its own
  inNextTask(() => setNext(true));
  return (
    <Portal mount={air}>
      <Show when={size().height > 0 && isNext()}>
        <div class="posing-air" style={{ left: `${props.left ?? 0}px` }}>
          <FigureHandle
            both
            width={size().width - (props.left ?? 0)}
            height={size().height - (props.under ?? 0)}
            touch={props.touch ?? false}
          />
        </div>
      </Show>
    </Portal>
  );
}

const SIDES = ['both', 'one'] as const;

function Switches() {
  const hand = useHand();
  return (
    <fieldset class="pose-switches">
      <legend class="spoken">{poseTexts.switches}</legend>
      <span class="choice" title={poseTexts.sidesHint}>
        <ChoiceButtons
          names={SIDES}
          words={poseTexts.sides}
          chosen={hand.chosenSides() ?? 'both'}
          choose={hand.setSides}
        />
      </span>
      <span class="choice" title={poseTexts.scopeHint}>
        <For each={['shape', 'key'] as const}>
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
