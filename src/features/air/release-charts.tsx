/** Angle at the landing and nearest distance over the time of the release, on the slider's axis. */
import { createMemo, For, Show } from 'solid-js';
import type { WindowResult } from '../../jobs/kinds/leg-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { StudyScale } from './study-scale.ts';
import { studyTexts as t } from './study-texts.ts';
import { type Span, tryNear, type WindowStudy } from './window-study.ts';
import { wordCause, wordMs, wordNear } from './window-words.ts';

interface ChartProps {
  window: WindowResult;
  study: WindowStudy;
  scale: StudyScale;
  offset: number;
}

const ANGLE = 84;
const NEAREST = 66;
/** no more than this much of an angle or a distance is of interest: deg, m */
const MOST_ANGLE = 60;
const MOST_NEAR = 0.4;

const seen = ({ window, scale }: ChartProps) =>
  window.tries.filter(({ lateMs }) => lateMs >= scale.from - 1e-6 && lateMs <= scale.to + 1e-6);

export function AngleChart(props: ChartProps) {
  const most = createMemo(() =>
    Math.max(20, Math.min(MOST_ANGLE, ...[Math.max(...seen(props).map((one) => Math.abs(one.overDeg)))])),
  );
  const y = (deg: number): number =>
    ANGLE / 2 + 8 - (Math.max(-most(), Math.min(most(), deg)) / most()) * (ANGLE / 2 - 14);
  const line = (): string =>
    seen(props)
      .map((one, i) => `${i ? 'L' : 'M'}${props.scale.x(one.lateMs).toFixed(1)} ${y(one.overDeg).toFixed(1)}`)
      .join('');
  const now = () => tryNear(props.window.tries, props.offset);
  return (
    <figure class="study-chart">
      <figcaption>
        <b>{t.angle}</b> {t.angleSigns}
      </figcaption>
      <svg width={props.scale.width} height={ANGLE + 16} role="img" aria-label={t.angle}>
        <Show when={props.study.held}>
          {(span) => (
            <rect
              class="window"
              x={props.scale.x(span().from)}
              width={Math.max(1, props.scale.x(span().to) - props.scale.x(span().from))}
              y="20"
              height={ANGLE - 10}
            />
          )}
        </Show>
        <path class="zero" d={`M${props.scale.x(props.scale.from)} ${y(0)}H${props.scale.x(props.scale.to)}`} />
        <text class="quiet-text" x={props.scale.x(props.scale.from)} y={y(0) + 15}>
          {t.wanted}
        </text>
        <path class="curve" d={line()} />
        <Show when={props.study.held && props.study.ends}>
          {(ends) => (
            <For each={ends()}>
              {(end, i) => (
                <>
                  <circle
                    class="ring"
                    cx={props.scale.x(end.ms)}
                    cy={y(tryNear(props.window.tries, end.ms).overDeg)}
                    r="4"
                  />
                  <text
                    x={
                      i() === 0
                        ? Math.max(2, props.scale.x(end.ms) - 8)
                        : Math.min(props.scale.width - 2, props.scale.x(end.ms) + 8)
                    }
                    y={i() === 0 ? 12 : 12}
                    text-anchor={
                      i() === 0
                        ? props.scale.x(end.ms) > 150
                          ? 'end'
                          : 'start'
                        : props.scale.x(end.ms) < props.scale.width - 150
                          ? 'start'
                          : 'end'
                    }
                  >
                    <tspan class="strong-text">{wordMs(end.ms)}: </tspan>
                    <tspan class={end.cause.kind === 'rail' ? 'stop-text' : ''}>{wordCause(end.cause)}</tspan>
                  </text>
                </>
              )}
            </For>
          )}
        </Show>
        <Show when={props.study.held}>
          {(span) => (
            <text
              class="strong-text"
              x={(props.scale.x(span().from) + props.scale.x(span().to)) / 2}
              y={ANGLE + 6}
              text-anchor="middle"
            >
              {props.scale.x(span().to) - props.scale.x(span().from) > 96
                ? t.window(formatNumber(span().to - span().from, 0))
                : ''}
            </text>
          )}
        </Show>
        <circle class="as-is" cx={props.scale.x(props.offset)} cy={y(now().overDeg)} r="4.5" />
      </svg>
    </figure>
  );
}

export function NearChart(props: ChartProps & { asked: number }) {
  const most = createMemo(() =>
    Math.max(2 * props.asked, Math.min(MOST_NEAR, Math.max(...seen(props).map((one) => one.nearM ?? 0)))),
  );
  const y = (m: number): number => 8 + (NEAREST - 16) * (1 - Math.max(0, Math.min(most(), m)) / most());
  const line = (): string =>
    seen(props)
      .filter((one) => one.nearM !== undefined)
      .map((one, i) => `${i ? 'L' : 'M'}${props.scale.x(one.lateMs).toFixed(1)} ${y(one.nearM ?? 0).toFixed(1)}`)
      .join('');
  const now = () => tryNear(props.window.tries, props.offset);
  const ends = (): readonly [number, number] => [props.scale.from, props.scale.to];
  const isSeen = (span: Span): boolean => span.from < props.scale.to && span.to > props.scale.from;
  const near = () => props.study.near.filter(isSeen);
  const touches = () => props.study.touches.filter(isSeen);
  return (
    <figure class="study-chart">
      <figcaption>
        <b>{t.nearest}</b> {t.nearestOf}
      </figcaption>
      <svg width={props.scale.width} height={NEAREST} role="img" aria-label={t.nearest}>
        <For each={near()}>
          {(span) => (
            <rect
              class="near"
              x={props.scale.x(span.from)}
              width={Math.max(0, props.scale.x(span.to) - props.scale.x(span.from))}
              y="2"
              height={NEAREST - 10}
            />
          )}
        </For>
        <path class="zero" d={`M${props.scale.x(props.scale.from)} ${y(0)}H${props.scale.x(props.scale.to)}`} />
        <path
          class="asked"
          d={`M${props.scale.x(props.scale.from)} ${y(props.asked)}H${props.scale.x(props.scale.to)}`}
        />
        <text class="quiet-text" x={props.scale.x(props.scale.from) + 2} y={y(props.asked) - 4}>
          {t.asked(say('length', props.asked))}
        </text>
        <path class="curve" d={line()} />
        <For each={touches()}>
          {(span) => <path class="touches" d={`M${props.scale.x(span.from)} ${y(0)}H${props.scale.x(span.to)}`} />}
        </For>
        <text class="stop-text" x={props.scale.x(props.scale.to) - 4} y="15" text-anchor="end">
          {wordNear(near(), ends(), say('length', props.asked))}
        </text>
        <Show when={touches().length > 0}>
          <text class="stop-text" x={props.scale.x(props.scale.to) - 4} y={NEAREST - 16} text-anchor="end">
            {t.touches}
          </text>
        </Show>
        <Show when={now().nearM !== undefined}>
          <circle
            class="as-is"
            classList={{ stop: (now().nearM ?? 0) < props.asked }}
            cx={props.scale.x(props.offset)}
            cy={y(now().nearM ?? 0)}
            r="4.5"
          />
        </Show>
      </svg>
    </figure>
  );
}
