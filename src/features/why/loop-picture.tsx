/** Two joint angles against each other, where nothing but their way turns the body: the loop they go round, and what it leaves. */
import { createMemo, Show } from 'solid-js';
import { DEG, REV } from '../../../sim/math/angles.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import { calcPlace } from '../../app/plot/readout.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { formatNumber, soften } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { ShapeLoop } from './shape-loop.ts';
import { accountTexts as a } from './words.ts';

const LEFT = 44;
const BOTTOM = 40;
const TOP = 24;
const RIGHT = 14;

export function LoopPicture(props: { loop: ShapeLoop; width: number; height: number }) {
  const flight = useFlight();
  const cursor = useCursor();
  const name = (column: number): string => wordJoint(flight.result().flight.body.angles[column]?.name ?? '');
  const box = createMemo(() => {
    const xs = props.loop.points.map((p) => p[0]);
    const ys = props.loop.points.map((p) => p[1]);
    return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
  });
  const x = (v: number): number =>
    LEFT + ((v - box().x0) / Math.max(box().x1 - box().x0, 1e-6)) * (props.width - LEFT - RIGHT);
  const y = (v: number): number =>
    TOP + ((box().y1 - v) / Math.max(box().y1 - box().y0, 1e-6)) * (props.height - TOP - BOTTOM);
  const way = createMemo(() =>
    props.loop.points.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${x(px).toFixed(1)} ${y(py).toFixed(1)}`).join(''),
  );
  const here = createMemo(() => {
    const { i, share } = calcPlace(flight.result().frames, cursor.at());
    const [p, q] = [props.loop.points[i], props.loop.points[i + 1] ?? props.loop.points[i]];
    return p && q ? ([p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share] as const) : undefined;
  });
  const turned = (): number => {
    const { twist, n } = flight.result().frames;
    return twist[n - 1] - twist[0];
  };
  const said = (): string =>
    a.loop.said(
      name(props.loop.across),
      soften(name(props.loop.up)),
      say('turns', Math.abs(turned()) / REV, 2),
      turned() > 0 ? a.way.twistLeft : a.way.twistRight,
    );
  const deg = (v: number): string => `${formatNumber(v * DEG, 0)}°`;
  return (
    <figure class="loop-picture">
      <svg width={props.width} height={props.height} role="img" aria-label={said()}>
        <path class="loop-area" d={`${way()}Z`} />
        <path class="loop-way" d={way()} />
        <text x={LEFT} y={props.height - 22}>
          {deg(box().x0)}
        </text>
        <text x={props.width - RIGHT} y={props.height - 22} text-anchor="end">
          {deg(box().x1)}
        </text>
        <text x={LEFT - 6} y={y(box().y0)} text-anchor="end">
          {deg(box().y0)}
        </text>
        <text x={LEFT - 6} y={y(box().y1) + 9} text-anchor="end">
          {deg(box().y1)}
        </text>
        <text class="loop-axis" x={LEFT} y={props.height - 5}>
          {name(props.loop.across)}
        </text>
        <text class="loop-axis" x={0} y={13}>
          {name(props.loop.up)}
        </text>
        <Show when={here()}>{(at) => <circle class="loop-now" cx={x(at()[0])} cy={y(at()[1])} r="6" />}</Show>
      </svg>
      <figcaption>
        <p>{said()}</p>
        <p class="quiet">{a.loop.area(formatNumber(Math.abs(props.loop.areaRad2), 2))}</p>
      </figcaption>
    </figure>
  );
}
