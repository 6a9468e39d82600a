/** Estimate against simulation, half to twice: the mark by hand with its ratio, its ±, and a ring with the cause taken back. */
import { Show } from 'solid-js';
import type { SheetRow } from '../../engine/estimate.ts';
import { estimateTexts as e } from './words.ts';

/** The ends of the line, as a ratio: a third of an octave beyond half and twice, and there the mark is an arrow. */
const MOST = 2.7;
const HEIGHT = 34;
const MIDDLE = HEIGHT / 2;
/** px for the number beside the mark */
const NUMBER = 34;

/** 0 to 1 along the line. */
export const placeOf = (ratio: number): number =>
  Math.min(1, Math.max(0, 0.5 + Math.log(ratio) / (2 * Math.log(MOST))));

type Hue = 'som' | 'twist' | 'tilt' | '';
/** Hue means axis: that of the readout, if it belongs to one. */
export function hueOf(readout: string): Hue {
  if (/somersault|lateral/.test(readout)) return 'som';
  if (/twist|long moment/.test(readout)) return 'twist';
  return /tilt/.test(readout) ? 'tilt' : '';
}

export function RatioLine(props: { row: SheetRow; width: number }) {
  const compared = () => (props.row.result.kind === 'quantity' ? props.row.result.compared : undefined);
  const ratio = (): number => compared()?.ratio ?? Number.NaN;
  const x = (r: number): number => 5 + placeOf(r) * (props.width - 10);
  const ring = (): number | undefined => {
    const c = compared();
    return c?.cause === undefined ? undefined : c.switches[c.cause]?.ratio;
  };
  const ends = (): { low: number; high: number } | undefined => {
    const { ratioLow: low, ratioHigh: high } = compared() ?? {};
    return low !== undefined && high !== undefined && low > 0 ? { low, high } : undefined;
  };
  const beyond = (): -1 | 0 | 1 => (ratio() > MOST ? 1 : ratio() < 1 / MOST ? -1 : 0);
  /** outside of the ± and the ring: left of what is less than equal, while there is room */
  const isLeft = (): boolean => ratio() <= 1 && x(Math.min(ends()?.low ?? ratio(), ratio())) > NUMBER + 6;
  const numberX = (): number =>
    beyond() > 0
      ? props.width - NUMBER - 12
      : beyond() < 0
        ? 16
        : isLeft()
          ? x(Math.min(ends()?.low ?? ratio(), ratio(), ring() ?? ratio())) - 6
          : Math.min(x(Math.max(ends()?.high ?? ratio(), ratio(), ring() ?? ratio())) + 8, props.width - NUMBER);
  return (
    <Show when={ratio() > 0}>
      <svg
        class="ratio-line"
        width={props.width}
        height={HEIGHT}
        role="img"
        aria-label={e.onScale(props.row.ratio ?? '', ends()?.low.toFixed(2) ?? '', ends()?.high.toFixed(2) ?? '')}
        data-ratio={ratio()}
      >
        <line class="part" x1={x(0.5)} x2={x(0.5)} y1="0" y2={HEIGHT} />
        <line class="part" x1={x(2)} x2={x(2)} y1="0" y2={HEIGHT} />
        <line class="equal" x1={x(1)} x2={x(1)} y1="0" y2={HEIGHT} />
        <g class={hueOf(compared()?.text ?? '')}>
          <Show when={ends()}>
            {(end) => (
              <rect
                class="spread"
                x={x(end().low)}
                y={MIDDLE - 7}
                width={Math.max(1, x(end().high) - x(end().low))}
                height="14"
              />
            )}
          </Show>
          <Show
            when={beyond() !== 0}
            fallback={<line class="mark" x1={x(ratio())} x2={x(ratio())} y1={MIDDLE - 11} y2={MIDDLE + 11} />}
          >
            <path
              class="arrow"
              d={beyond() > 0 ? `M${props.width - 10} ${MIDDLE - 7}l8 7-8 7z` : `M10 ${MIDDLE - 7}l-8 7 8 7z`}
            />
          </Show>
          <Show when={ring()}>{(r) => <circle class="ring" cx={x(r())} cy={MIDDLE} r="5.5" />}</Show>
          <text
            class="ratio-number"
            x={numberX()}
            y={MIDDLE + 5}
            text-anchor={beyond() === 0 && isLeft() ? 'end' : 'start'}
          >
            {props.row.ratio}
          </text>
        </g>
      </svg>
    </Show>
  );
}
