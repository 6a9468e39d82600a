/** Hand on: what of the skill leaves this machine, and by which way. */
import { createResource, For, onCleanup, onMount, Show } from 'solid-js';
import { Dynamic, Portal } from 'solid-js/web';
import { usePage, useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import type { Handing } from '../../engine/handing.ts';
import { makeHandState } from './hand-state.ts';
import { HandCautions, HandSentence, Travels } from './travels.tsx';
import type { HandState, HandWay } from './way.ts';
import { rowHeight, WayButton, WayRows, WaySaid } from './way-rows.tsx';
import { ways } from './ways.ts';
import { handTexts as t } from './words.ts';

const KEYS = 22;
/** px over the floor: what travels is in single lines */
const LOW = 240;

export function HandTool(props: ToolProps) {
  const { services } = usePage();
  const [room] = createResource(() => services.load.handing());
  return <Show when={room()}>{(there) => <Loaded {...props} room={there()} />}</Show>;
}

function Loaded(props: ToolProps & { room: Handing }) {
  const page = usePage();
  // the room is the same for as long as the tool is open
  // eslint-disable-next-line solid/reactivity
  const hand = makeHandState(page, props.room, props.device === 'bench' ? ways[0].id : '');
  useHandKeys(hand);
  return (
    <div class="hand" classList={{ touch: props.device !== 'bench' }}>
      <Show when={hand.cannot()}>{(why) => <p role="alert">{t.cannot(why())}</p>}</Show>
      <Show when={props.device === 'bench'} fallback={<TouchHand {...props} hand={hand} />}>
        <WideHand {...props} hand={hand} />
      </Show>
      <Show when={ways.find(({ id }) => id === hand.opened())?.Over}>
        {(Over) => (
          <Dynamic
            component={Over()}
            hand={hand}
            width={props.width}
            device={props.device}
            close={() => hand.open(undefined)}
          />
        )}
      </Show>
    </div>
  );
}

type Parts = ToolProps & { readonly hand: HandState };

const pickedOf = (hand: HandState): HandWay | undefined => ways.find(({ id }) => id === hand.picked());

function WideHand(props: Parts) {
  const { places } = useShell();
  const right = (): number => props.width - props.timeLeft - props.axis.width;
  const head = () => (
    <div class="hand-head" data-tool-part="hand">
      <HandSentence hand={props.hand} />
    </div>
  );
  const before = () => (
    <div class="hand-before" data-tool-part="hand">
      <Travels hand={props.hand} low={(props.pictures ?? 0) < LOW} />
    </div>
  );
  const cut = () => (
    <div class="hand-cut" data-tool-part="hand">
      <HandCautions hand={props.hand} />
      <AddressPart hand={props.hand} />
    </div>
  );
  return (
    <div class="hand-wide">
      <Show when={places.headline()}>{(mount) => <Portal mount={mount()}>{head()}</Portal>}</Show>
      <Show when={places.before()}>{(mount) => <Portal mount={mount()}>{before()}</Portal>}</Show>
      <Show when={places.cut()}>{(mount) => <Portal mount={mount()}>{cut()}</Portal>}</Show>
      <div class="hand-left" style={{ width: `${props.timeLeft + props.axis.width}px` }}>
        <Show when={props.isTall}>
          <div class="hand-tall">
            {before()}
            {cut()}
          </div>
        </Show>
        <WayRows
          hand={props.hand}
          ways={ways}
          axis={props.axis}
          left={props.timeLeft}
          height={rowHeight(props.height - KEYS, ways.length)}
        />
        <p class="quiet hand-keys" style={{ 'margin-left': '94px' }}>
          {t.keys}
        </p>
      </div>
      <div class="hand-view" style={{ width: `${right()}px` }}>
        <PickedView hand={props.hand} width={right() - 44} device="bench" />
      </div>
    </div>
  );
}

function PickedView(props: { hand: HandState; width: number; device: ToolProps['device'] }) {
  return (
    <Show when={pickedOf(props.hand)?.View}>
      {(View) => <Dynamic component={View()} hand={props.hand} width={props.width} device={props.device} />}
    </Show>
  );
}

function AddressPart(props: { hand: HandState }) {
  const shell = useShell();
  return (
    <section class="hand-address" aria-label={t.address}>
      <h2>{t.address}</h2>
      <p>
        <b>{props.hand.base() ?? t.noAddress}</b>{' '}
        <button type="button" class="link" onClick={() => shell.openPanel('menu')}>
          {t.change}
        </button>
      </p>
      <p class="quiet">{props.hand.base() === undefined ? t.noAddressHint : t.addressHint}</p>
    </section>
  );
}

function TouchHand(props: Parts) {
  const pad = (): number => (props.device === 'phone' ? 16 : 20);
  return (
    <div class="hand-touch">
      <HandSentence hand={props.hand} />
      <HandCautions hand={props.hand} />
      <Travels hand={props.hand} brief />
      <For each={ways}>
        {(way) => {
          const refused = (): string | undefined => props.hand.cannot() ?? way.refused?.(props.hand);
          return (
            <div class="touch-way" classList={{ refused: refused() !== undefined }} data-way={way.id}>
              <div class="hand-touch-row">
                <Dynamic component={way.Thumb} />
                <p>
                  <b>{way.name}</b>
                  <small>{refused() ?? way.brief(props.hand)}</small>
                </p>
                <WayButton hand={props.hand} way={way} word={way.short} />
              </div>
              <WaySaid hand={props.hand} way={way} />
              <Show when={props.hand.picked() === way.id && way.View}>
                {(View) => (
                  <Dynamic component={View()} hand={props.hand} width={props.width - 2 * pad()} device={props.device} />
                )}
              </Show>
            </div>
          );
        }}
      </For>
    </div>
  );
}

const TYPED = 'input:not([type="checkbox"]), textarea, select, [contenteditable]';

/** Up and down pick a way, Enter does it, T goes to what travels. */
function useHandKeys(hand: HandState): void {
  const onKey = (e: KeyboardEvent): void => {
    const { target } = e;
    if (e.ctrlKey || e.metaKey || e.altKey || document.querySelector('dialog[open]')) return;
    if (!(target instanceof Element) || target.closest(TYPED)) return;
    const at = ways.findIndex(({ id }) => id === hand.picked());
    const step = { ArrowUp: -1, ArrowDown: 1 }[e.key];
    if (step !== undefined && !target.closest('[role="slider"]'))
      hand.pick(ways[Math.min(Math.max(at + step, 0), ways.length - 1)].id);
    else if (e.key === 'Enter' && at >= 0 && !target.closest('button, a, summary, input')) hand.run(ways[at]);
    else if (e.key === 't' || e.key === 'T') {
      const boxes = [...document.querySelectorAll<HTMLInputElement>('.travels input:not(:disabled)')];
      const next = (boxes.indexOf(document.activeElement as HTMLInputElement) + 1) % Math.max(boxes.length, 1);
      boxes[next]?.focus();
    } else return;
    e.preventDefault();
    e.stopPropagation();
  };
  onMount(() => {
    window.addEventListener('keydown', onKey, true);
    onCleanup(() => window.removeEventListener('keydown', onKey, true));
  });
}
