/**
 * Rate times moment: long-axis moment across, twist rate upward, so tall and narrow when wrapped, wide and low when open.
 * The area is the momentum about the long axis, which changes with tilt: the two areas need not be equal.
 */
import { Show } from 'solid-js';
import { texts } from '../texts.ts';
import { type Bench, nameShape } from './bench.ts';
import type { CutValues } from './cut.tsx';
import { formatNumber, REV, soften } from './numbers.ts';
import { calcPlace, readAt } from './readout.ts';

const t = texts.pin;

export function RateMoment(props: { bench: Bench; cut: CutValues; width: number; height: number }) {
  const pinned = () => {
    const s = props.bench.pin();
    if (s === undefined) return undefined;
    const f = props.bench.result().frames;
    const place = calcPlace(f, s);
    const way = f.twist[f.n - 1] < f.twist[0] ? -1 : 1;
    return {
      rate: readAt(f.twistRate, place) * REV * way,
      moment: readAt(f.moments, place, 3, 2),
      shape: soften(nameShape(props.bench.spans(), s)),
      s: formatNumber(s, 2),
    };
  };
  const top = () => {
    const f = props.bench.result().frames;
    let rate = 0.2;
    let moment = 0.2;
    for (let i = 0; i < f.n; i++) {
      rate = Math.max(rate, Math.abs(f.twistRate[i]) * REV || 0);
      moment = Math.max(moment, f.moments[3 * i + 2]);
    }
    return { rate, moment };
  };
  const w = (moment: number): number => (Math.max(moment, 0) / top().moment) * (props.width - 2);
  const h = (rate: number): number => (Math.abs(rate || 0) / top().rate) * (props.height - 4);
  return (
    <div class="rate-moment">
      <div>
        <h2>{props.cut.shape}</h2>
        <p class="quiet">{pinned() ? t.against(pinned()?.shape ?? '', pinned()?.s ?? '') : props.cut.attitude}</p>
        <p class="xl twist">{formatNumber(props.cut.twistRate, 2)}</p>
        <p class="word">{t.rateTwist}</p>
        <Show when={pinned()}>{(one) => <p class="word">{t.pinned(formatNumber(one().rate, 2))}</p>}</Show>
        <p class="xl twist">{formatNumber(props.cut.long, 2)}</p>
        <p class="word">{t.momentLong}</p>
        <Show when={pinned()}>{(one) => <p class="word">{t.pinned(formatNumber(one().moment, 2))}</p>}</Show>
      </div>
      <figure>
        <svg width={props.width} height={props.height} role="img" aria-label={t.explain}>
          <rect
            class="now"
            x="1"
            y={props.height - 2 - h(props.cut.twistRate)}
            width={w(props.cut.long)}
            height={h(props.cut.twistRate)}
          />
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
