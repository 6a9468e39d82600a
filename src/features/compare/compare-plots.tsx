/** Curves of all versions on one ruler, and at the cursor the values of the two that are compared. */

import { createMemo, For, type JSX, Show } from 'solid-js';
import { useCursor } from '../../app/page.ts';
import { drawBackdrop } from '../../app/plot/backdrop.ts';
import type { Box } from '../../app/plot/pen.ts';
import { usePalette } from '../../app/plot/plot-canvas.tsx';
import { calcPlace } from '../../app/plot/readout.ts';
import { planRows } from '../../app/plot/row-plan.ts';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import { texts } from '../../app/words.ts';
import { drawOnFrame } from '../../ui/frame.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, tOf } from '../../ui/plot/axis.ts';
import { fitCanvas } from '../../ui/plot/fit-canvas.ts';
import { startScrub } from '../../ui/scrub.ts';
import { type QuantityKind, shownAs, unitSystem } from '../../ui/units.ts';
import {
  type ComparedLine,
  type Course,
  type CurveName,
  drawCompared,
  linesOf,
  MEASURES,
  type MeasureName,
  makePens,
  ROW_TITLES,
} from './compare-draw.ts';
import type { CompareState } from './compare-state.ts';
import { VersionTag } from './version-tag.tsx';
import { compareTexts as c } from './words.ts';

/** From here on, revolutions, a flight twists. */
const TWISTS = 0.05;

function useCourses(of: () => CompareState) {
  const courses = createMemo<Course[]>(() =>
    of()
      .flown()
      .flatMap((f) =>
        f.result
          ? [
              {
                letter: f.letter,
                result: f.result,
                shiftS: f.shiftS,
                compared: f.letter === of().base().letter || f.letter === of().other()?.letter,
              },
            ]
          : [],
      ),
  );
  const twisting = createMemo(() => courses().some((one) => (one.result.outline.twists ?? 0) > TWISTS));
  return { courses, twisting };
}

export function ComparePlots(props: {
  state: CompareState;
  axis: TimeAxis;
  height: number;
  /** where the time column begins; the names of the rows stand left of it, or on the rows where there is no room */
  timeLeft: number;
  valuesWidth: number;
  lineWidth: number;
}) {
  const cursor = useCursor();
  let canvas!: HTMLCanvasElement;
  const palette = usePalette();
  // one set of courses for this panel
  const { courses, twisting } = useCourses(() => props.state);
  const named = (): boolean => props.timeLeft > 100;
  const plan = createMemo(() =>
    planRows(
      [
        { id: 'rate', least: named() ? 66 : 84, grow: 5, gap: named() ? 8 : 22, yields: 0 },
        ...(twisting() ? [{ id: 'tilt', least: 30, grow: 2, gap: named() ? 14 : 26, yields: 2 }] : []),
        ...(twisting()
          ? [{ id: 'long', least: 34, grow: 2, gap: named() ? 14 : 26, yields: 1 }]
          : [{ id: 'lateral', least: 34, grow: 2, gap: named() ? 14 : 26, yields: 1 }]),
        ...(twisting() ? [{ id: 'lateral', least: 30, grow: 1.4, gap: named() ? 14 : 26, yields: 3 }] : []),
      ],
      props.height - 10,
    ),
  );
  const rows = createMemo(() => [...plan().keys()] as CurveName[], [], { equals: (a, b) => a.join() === b.join() });
  const box = (row: CurveName): Box => plan().get(row) ?? { y: 0, height: 0 };
  drawOnFrame(courses, () => {
    const axis = props.axis;
    const height = props.height;
    const sheet = fitCanvas(canvas, axis.width, height);
    if (!sheet) return;
    const { g, ratio } = sheet;
    const list = courses();
    const pens = makePens(g, ratio, axis, palette(), cursor.at(), props.lineWidth, list, unitSystem());
    if (!pens[0]) return;
    drawBackdrop(pens[0], { y: 0, height });
    for (const row of rows()) drawCompared(pens, list, linesOf(row, twisting()), box(row));
  });
  const press = (e: PointerEvent): void => startScrub(e, cursor, (x) => tOf(props.axis, x));
  const unit = (row: CurveName): string =>
    row === 'rate' ? shownAs('rate').unit : row === 'tilt' ? '' : shownAs('moment').unit;
  return (
    <section class="compare-plots" style={{ height: `${props.height}px` }} aria-label={c.curves}>
      <For each={rows()}>
        {(row) => (
          <div
            class={named() ? 'row-title' : 'row-on'}
            style={{
              top: `${box(row).y - (named() ? 5 : 20)}px`,
              left: named() ? undefined : `${props.timeLeft + props.axis.x0}px`,
            }}
          >
            <h3>
              {ROW_TITLES[row]}
              <span class="unit">{unit(row)}</span>
              <Show when={props.valuesWidth === 0}>
                <span class="values-on">
                  <Pair courses={courses()} line={linesOf(row, twisting()).slice(-1)[0]} cursor={cursor.at()} />
                </span>
              </Show>
            </h3>
            <Show when={row === 'rate' && named()}>
              <Show when={twisting()}>
                <p class="twist">
                  <Icon name="twist" size={16} /> {texts.plots.Twist}
                </p>
              </Show>
              <p class="som">
                <Icon name="somersault" size={16} /> {texts.plots.Somersault}
              </p>
            </Show>
            <Show when={row === 'tilt' && named()}>
              <p class="quiet">
                <Icon name="tilt" size={16} class="tilt" /> {texts.plots.fromPlane}
              </p>
            </Show>
          </div>
        )}
      </For>
      <div
        class="time-column"
        style={{ left: `${props.timeLeft}px`, width: `${props.axis.width}px`, height: `${props.height}px` }}
        onPointerDown={press}
      >
        <TouchPlumb axis={props.axis} />
        <canvas ref={canvas} class="plots" style={{ width: `${props.axis.width}px`, height: `${props.height}px` }} />
      </div>
      <Show when={props.valuesWidth > 0}>
        <div
          class="compare-values"
          style={{ left: `${props.timeLeft + props.axis.width + 6}px`, width: `${props.valuesWidth}px` }}
        >
          <span class="spoken">{c.values}</span>
          <For each={rows()}>
            {(row) => (
              <div class="values-of" style={{ top: `${box(row).y - 6}px`, height: `${box(row).height + 12}px` }}>
                <For each={[...linesOf(row, twisting())].reverse()}>
                  {(line) => <Pair courses={courses()} line={line} cursor={cursor.at()} />}
                </For>
              </div>
            )}
          </For>
        </div>
      </Show>
    </section>
  );
}

const QUANTITY: Readonly<Record<MeasureName, QuantityKind>> = {
  twist: 'rate',
  somersault: 'rate',
  tilt: 'angle',
  lateral: 'moment',
  long: 'moment',
};

/** One quantity at the cursor, for the two that are compared. */
function Pair(props: { courses: readonly Course[]; line: ComparedLine; cursor: number }): JSX.Element {
  const value = ({ result, shiftS }: Course): string => {
    const curve = MEASURES[props.line.name](result, unitSystem());
    const place = calcPlace(result.frames, props.cursor + shiftS);
    const v = curve(place.i) * (1 - place.share) + curve(place.i + 1) * place.share;
    const { decimals } = shownAs(QUANTITY[props.line.name]);
    return formatNumber(v, props.line.name === 'tilt' ? 1 : decimals);
  };
  return (
    <For each={props.courses.filter((one) => one.compared)}>
      {(one) => (
        <span class={`pair-value ${props.line.hue}`}>
          <VersionTag letter={one.letter} small />{' '}
          <b>
            {value(one)}
            {props.line.name === 'tilt' ? '°' : ''}
          </b>
        </span>
      )}
    </For>
  );
}
