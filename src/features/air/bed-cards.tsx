/** Bounces of one bed: a card exactly under each contact and the flight that it gives. */
import { For, Show } from 'solid-js';
import type { WholeState } from '../../app/whole-state.ts';
import type { LegResult } from '../../jobs/kinds/leg-data.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { AirFrame } from './air-frame.ts';
import { turnedRows } from './card-model.ts';
import { cardTexts as t } from './card-texts.ts';
import { type WholeAxis, wholeX } from './whole-axis.ts';

const DEG = 180 / Math.PI;
/** m under which a bounce is on the spot */
const SPOT = 0.05;

/** All contacts are with one bed. */
export const isBedSeries = ({ phases, legs }: WholeResult): boolean =>
  phases.some((span) => span.kind === 'contact') &&
  phases.every((span) => span.kind !== 'contact' || span.on === 'trampoline') &&
  phases.every((span) => span.kind !== 'swing') &&
  legs.length > 1;

function wordEnd({ verdict }: LegResult): string {
  const { short, ending } = verdict;
  const deg = short === undefined ? 0 : Math.round(Math.abs(short) * DEG);
  const how = deg === 0 ? t.upright : short !== undefined && short > 0 ? t.short(`${deg}°`) : t.past(`${deg}°`);
  return ending.kind === 'bounces' || ending.kind === 'notComputed' || ending.kind === 'inAir'
    ? `${t.bounces}, ${how}`
    : how;
}

export function BedCards(props: { state: WholeState; whole: WholeResult; axis: WholeAxis; frame: AirFrame }) {
  const slides = (): boolean => props.frame.device !== 'bench';
  const place = (leg: LegResult): { left: number; width: number } => {
    const from = Math.max(leg.from, props.axis.from);
    const left = props.frame.timeX + wholeX(props.axis, from);
    return { left, width: props.frame.timeX + wholeX(props.axis, leg.touchdown) - left - 8 };
  };
  const side = (leg: LegResult): 1 | -1 => (leg.vx < 0 ? -1 : 1);
  return (
    <section class="bed-cards" classList={{ slides: slides() }} aria-label={t.each}>
      <Show when={!slides()}>
        <div class="bed-names" style={{ width: `${props.frame.timeX}px` }} aria-hidden="true">
          <b>{t.each}</b>
          <span>{t.airTime}</span>
          <span>{t.turned}</span>
          <span>{t.travel}</span>
          <span>{t.endsAs}</span>
        </div>
      </Show>
      <For each={props.whole.legs}>
        {(leg) => (
          <article
            class="air-card contact bed"
            style={slides() ? { width: '240px' } : { left: `${place(leg).left}px`, width: `${place(leg).width}px` }}
          >
            <button type="button" class="card-head" onClick={() => props.state.setCursor(leg.takeoff)}>
              <b>{leg.title}</b>
            </button>
            <p>
              <span class="spoken">{t.airTime}</span> <b>{formatNumber(leg.touchdown - leg.takeoff, 2)}</b> s
            </p>
            <p>
              <For each={turnedRows(leg)}>
                {(row, i) => (
                  <span class={row.hue ?? ''}>
                    {i() > 0 ? ', ' : ''}
                    <b>{row.value}</b> {row.under ?? ''}
                  </span>
                )}
              </For>
            </p>
            <p>
              {Math.abs(leg.flight.travel) < SPOT
                ? t.onTheSpot
                : t.travels(say('length', Math.abs(leg.flight.travel)), side(leg) < 0)}
            </p>
            <p>
              <b>{wordEnd(leg)}</b>
            </p>
          </article>
        )}
      </For>
    </section>
  );
}
