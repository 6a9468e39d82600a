/** The cards of a chain in order, each tied to its span on the ruler by a line; a press goes to its phase. */
import { createMemo, For, Show } from 'solid-js';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import type { AirFrame } from './air-frame.ts';
import { type Card, cardsOf } from './card-model.ts';
import { cardTexts as t } from './card-texts.ts';
import { type WholeAxis, wholeX } from './whole-axis.ts';

const GAP = 12;
const LINES = 18;
/** px that a card wants, by its kind; what is left is shared */
const WANTS = { contact: 236, flight: 132, end: 250 } as const;

export function AirCards(props: { state: WholeState; whole: WholeResult; axis: WholeAxis; frame: AirFrame }) {
  const cards = createMemo(() => cardsOf(props.whole));
  const slides = (): boolean => props.frame.device !== 'bench';
  const places = createMemo(() => {
    const room = props.frame.width - 40 - GAP * (cards().length - 1);
    const wanted = cards().reduce((sum, card) => sum + WANTS[card.kind], 0);
    const share = slides() ? 1 : Math.min(1.25, room / wanted);
    let left = slides() ? 16 : 20;
    return cards().map((card) => {
      const width = Math.round(WANTS[card.kind] * share);
      const place = { left, width };
      left += width + GAP;
      return place;
    });
  });
  /** from the middle of its span to the middle of its card: lines of one side keep out of each other's way */
  const ties = createMemo(() =>
    cards().map((card, i) => {
      const at = (s: number): number => wholeX(props.axis, Math.min(Math.max(s, props.axis.from), props.axis.to));
      const x = props.frame.timeX + (card.kind === 'end' ? at(card.from) + 3 : (at(card.from) + at(card.to)) / 2);
      const { left, width } = places()[i];
      const to = Math.min(Math.max(x, left + 12), left + width - 12);
      return { x, to, isContact: card.kind === 'contact' };
    }),
  );
  return (
    <section class="air-cards" aria-label={t.label}>
      <Show when={!slides()}>
        <svg class="card-ties" width={props.frame.width} height={LINES} aria-hidden="true">
          <For each={ties()}>
            {({ x, to, isContact }, i) => (
              <path classList={{ contact: isContact }} d={`M${x} 0V${tieLevel(ties(), i())}H${to}V${LINES}`} />
            )}
          </For>
        </svg>
      </Show>
      <div class="card-row" classList={{ slides: slides() }}>
        <For each={cards()}>
          {(card, i) => (
            <CardView
              card={card}
              width={places()[i()].width}
              isHere={isWithin(card, props.state.cursor())}
              go={() => props.state.setCursor(card.from)}
            />
          )}
        </For>
      </div>
    </section>
  );
}

const isWithin = ({ from, to }: Card, at: number): boolean => at >= from - 1e-9 && at <= to + 1e-9;

/** Ties that go to the left come from the left first, so the later are lower; to the right the other way round. */
function tieLevel(ties: readonly { readonly x: number; readonly to: number }[], i: number): number {
  const { x, to } = ties[i];
  const crossing = ties.filter((other, k) =>
    to < x ? k < i && other.x > to && other.to < other.x : k > i && other.x < to && other.to > other.x,
  );
  return Math.min(LINES - 3, 5 + 4 * crossing.length);
}

function CardView(props: { card: Card; width: number; isHere: boolean; go: () => void }) {
  return (
    <article
      class={`air-card ${props.card.kind}`}
      classList={{ here: props.isHere, open: props.card.isOpen === true }}
      style={{ width: `${props.width}px` }}
    >
      <button type="button" class="card-head" onClick={() => props.go()}>
        <b>{props.card.name}</b> <span>{props.card.aside}</span>
      </button>
      <Show when={props.card.head}>
        <p class="card-big">{props.card.head}</p>
      </Show>
      <dl>
        <For each={props.card.rows}>
          {(row) => (
            <div>
              <dt>{row.name}</dt>
              <dd class={row.hue ?? ''}>
                {row.value}
                <Show when={row.under}>
                  <span>{row.under}</span>
                </Show>
              </dd>
            </div>
          )}
        </For>
      </dl>
      <For each={props.card.notes}>{(note) => <p class="card-note">{note}</p>}</For>
      <For each={props.card.faults}>{(fault) => <p class="card-fault">{fault}</p>}</For>
    </article>
  );
}
