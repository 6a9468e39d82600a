/**
 * Rate times moment: long-axis moment across, twist rate upward (lateral and somersault when the flight hardly twists), so tall and narrow when wrapped, wide and low when open.
 * The area is the momentum about the long axis, which changes with tilt: the two areas need not be equal.
 */

import { Show } from 'solid-js';
import { REV } from '../../../sim/math/angles.ts';
import type { CutValues } from '../../app/cut-values.ts';
import { nameShape } from '../../app/flight.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import { calcPlace, readAt } from '../../app/plot/readout.ts';
import type { Outline } from '../../engine/result.ts';
import { formatNumber, soften } from '../../ui/numbers.ts';
import { sayNumber, unitOf } from '../../ui/units.ts';
import { Bounds } from './bounds.tsx';
import { Explanation } from './cut.tsx';
import { pinTexts } from './words.ts';

const t = pinTexts;

/** Under this many twists a flight is read by its somersaults. */
const TWISTING = 0.2;
export const isTwisting = (outline: Outline): boolean => (outline.twists ?? 0) >= TWISTING;

export function RateMoment(props: {
  cut: CutValues;
  explanation: string;
  twisting: boolean;
  width: number;
  height: number;
}) {
  const cursor = useCursor();
  const flight = useFlight();
  // moments stand as [lateral, front-back, long]
  const axis = (): number => (props.twisting ? 2 : 0);
  const hue = (): string => (props.twisting ? 'twist' : 'som');
  const rate = (): number => (props.twisting ? props.cut.twistRate : props.cut.somersaultRate);
  const moment = (): number => (props.twisting ? props.cut.long : props.cut.lateral);
  const pinned = () => {
    const s = cursor.pin();
    if (s === undefined) return undefined;
    const f = flight.result().frames;
    const place = calcPlace(f, s);
    const counted = props.twisting ? f.twist : f.somersault;
    const way = counted[f.n - 1] < counted[0] ? -1 : 1;
    return {
      rate: (readAt(props.twisting ? f.twistRate : f.somersaultRate, place) / REV) * way,
      moment: readAt(f.moments, place, 3, axis()),
      shape: soften(nameShape(flight.spans(), s)),
      s: formatNumber(s, 2),
    };
  };
  const top = () => {
    const f = flight.result().frames;
    const rates = props.twisting ? f.twistRate : f.somersaultRate;
    let rate = 0.2;
    let moment = 0.2;
    for (let i = 0; i < f.n; i++) {
      rate = Math.max(rate, Math.abs(rates[i]) / REV || 0);
      moment = Math.max(moment, f.moments[3 * i + axis()]);
    }
    return { rate, moment };
  };
  const w = (moment: number): number => (Math.max(moment, 0) / top().moment) * (props.width - 2);
  const h = (rate: number): number => (Math.abs(rate || 0) / top().rate) * (props.height - 4);
  return (
    <div class="rate-moment">
      <header>
        <Show when={props.cut.shape}>
          <h2>{props.cut.shape}</h2>
        </Show>
        <p class="quiet">{pinned() ? t.against(pinned()?.shape ?? '', pinned()?.s ?? '') : props.cut.attitude}</p>
        {/* beside a pin there are two more lines, and another question */}
        <Show when={!pinned()}>
          <Explanation words={props.explanation} />
        </Show>
        <Bounds />
      </header>
      <div>
        <p class={`xl ${hue()}`}>{sayNumber('rate', rate(), 2)}</p>
        <p class="word">
          {unitOf('rate')} {props.twisting ? t.rateTwist : t.rateSomersault}
        </p>
        <Show when={pinned()}>{(one) => <p class="word">{t.pinned(sayNumber('rate', one().rate, 2))}</p>}</Show>
        <p class={`xl ${hue()}`}>{sayNumber('moment', moment(), 2)}</p>
        <p class="word">
          {unitOf('moment')} {props.twisting ? t.momentLong : t.momentLateral}
        </p>
        <Show when={pinned()}>{(one) => <p class="word">{t.pinned(sayNumber('moment', one().moment, 2))}</p>}</Show>
      </div>
      <figure>
        <svg width={props.width} height={props.height} role="img" aria-label={t.explain}>
          <rect class={`now ${hue()}`} x="1" y={props.height - 2 - h(rate())} width={w(moment())} height={h(rate())} />
          <Show when={pinned()}>
            {(one) => (
              <rect
                class="pinned"
                x="1"
                y={props.height - 2 - h(one().rate)}
                width={w(one().moment)}
                height={h(one().rate)}
              />
            )}
          </Show>
          <path d={`M0 ${props.height - 1.5} H${props.width}`} stroke="var(--rule-2)" />
        </svg>
        <figcaption>{t.axes}</figcaption>
      </figure>
    </div>
  );
}
