/** What each part of the body carries about one axis, over time and with its sign: above zero with the positive direction, below against it. */
import { createMemo, createSignal, createUniqueId, For } from 'solid-js';
import { useCursor, useFlight } from '../../app/page.ts';
import { nameCurve } from '../../app/plot/curve-names.ts';
import { drawCurve, drawRule, drawTick, findTop, makeScale, niceTop, type Pen } from '../../app/plot/pen.ts';
import { PlotCanvas, type PlotPiece } from '../../app/plot/plot-canvas.tsx';
import { calcPlace, readAt } from '../../app/plot/readout.ts';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import { formatTick } from '../../ui/numbers.ts';
import { type TimeAxis, tOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { say } from '../../ui/units.ts';
import { AXES, type AxisName, listParts } from './axis-momentum.ts';
import { accountTexts as a } from './words.ts';

/** Distinct without any colour. */
const DASHES: readonly (readonly number[])[] = [[], [6, 4], [1.6, 3.2]];

export function MomentumParts(props: { axis: TimeAxis; left: number; height: number; opensAbout: AxisName }) {
  const flight = useFlight();
  const cursor = useCursor();
  const id = createUniqueId();
  const [chosen, setAbout] = createSignal<AxisName>();
  const about = (): AxisName => chosen() ?? props.opensAbout;
  const parts = createMemo(() => listParts(flight.result().frames, about()));
  const pieces = createMemo<PlotPiece[]>(() => [
    { box: { y: 8, height: props.height - 16 }, draw: (pen) => drawParts(pen, about(), props.height) },
  ]);
  const now = (column: Float64Array): string => {
    const v = readAt(column, calcPlace(flight.result().frames, cursor.at()));
    return `${v > 0 ? '+' : ''}${say('momentum', v, 1)}`;
  };
  return (
    <div class="momentum-parts" classList={{ stacked: props.left === 0 }}>
      <div class="momentum-title" style={props.left > 0 ? { width: `${props.left}px` } : {}}>
        <label for={id}>{a.parts.title}</label>
        <select id={id} value={about()} onChange={(e) => setAbout(e.currentTarget.value as AxisName)}>
          <For each={AXES}>{(name) => <option value={name}>{a.parts.axes[name]}</option>}</For>
        </select>
        <ul>
          <For each={parts()}>
            {(part) => (
              <li>
                {a.parts.groups[part.group] ?? part.group} <b>{now(part.column)}</b>
              </li>
            )}
          </For>
        </ul>
      </div>
      <div
        class="momentum-plot"
        style={{ width: `${props.axis.width}px`, height: `${props.height}px` }}
        role="img"
        aria-label={a.parts.picture(a.parts.axes[about()])}
        onPointerDown={(e) => startScrub(e, cursor, (x) => tOf(props.axis, x))}
      >
        <PlotCanvas axis={props.axis} height={props.height} shadeFrom={0} pieces={pieces()} lineWidth={2} />
        <TouchPlumb axis={props.axis} />
      </div>
    </div>
  );
}

function drawParts(pen: Pen, about: AxisName, height: number): void {
  const all = listParts(pen.result.frames, about);
  const factor = pen.units.toShown('momentum', 1);
  const curves = all.map(({ group, column }) => ({ group, curve: (i: number) => column[i] * factor }));
  const high = findTop(pen, ...curves.map((one) => one.curve));
  const low = findTop(
    pen,
    ...curves.map(
      ({ curve }) =>
        (i: number) =>
          -curve(i),
    ),
  );
  const top = niceTop(Math.max(high, 0.05 * low, 0.1));
  const bottom = low > 0.05 * top ? -niceTop(low) : 0;
  const box = { y: 8, height: height - 16 };
  const scale = makeScale(box, bottom, top);
  drawRule(pen, scale(0), true);
  drawTick(pen, scale(top) + 2, formatTick(top));
  drawTick(pen, scale(0), '0');
  if (bottom < 0) drawTick(pen, scale(bottom), formatTick(bottom));
  const isWhole = (group: string): boolean => group === 'sum';
  curves.forEach(({ group, curve }, k) => {
    pen.g.setLineDash([...(isWhole(group) ? [] : (DASHES[k % DASHES.length] ?? []))]);
    drawCurve(
      pen,
      curve,
      scale,
      isWhole(group) ? 'ink' : 'ink-2',
      isWhole(group) ? pen.lineWidth * 1.3 : pen.lineWidth,
    );
    pen.g.setLineDash([]);
  });
  curves.forEach(({ group, curve }, k) => {
    const others = curves.flatMap((one, i) => (i === k ? [] : [{ curve: one.curve, scale }]));
    nameCurve(pen, a.parts.groups[group] ?? group, isWhole(group) ? 'ink' : 'ink-2', curve, scale, others, box);
  });
}
