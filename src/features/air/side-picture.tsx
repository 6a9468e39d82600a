/** The side view: to the scale of the time picture, with apparatus, forces, and the ways that another release would take. */
import { createMemo, untrack } from 'solid-js';
import { useFlight } from '../../app/page.ts';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import type { WholeOther, WholePictures } from '../../pictures/whole-input.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { AirFrame } from './air-frame.ts';
import { airTexts as t } from './air-texts.ts';
import { studyWindow, tryNear } from './window-study.ts';
import { wordCause, wordMs } from './window-words.ts';

/** px of X = 0 in the side view, and which way X runs there. */
export interface SideRange {
  readonly x0: number;
}

/** Where the side view's zero is: what must be seen in its middle, or where that is too wide what is at the cursor. */
export function useSideRange(
  pictures: () => WholePictures | undefined,
  whole: () => WholeResult,
  frame: () => AirFrame,
  cursor: () => number,
): () => SideRange {
  const flight = useFlight();
  const extent = createMemo(
    () => pictures()?.extent(whole(), untrack(flight.result)) ?? { from: -1, to: 1, way: 1 as const },
  );
  const range = createMemo((): SideRange => {
    const { from, to, way } = extent();
    const { pxPerM } = frame();
    const width = frame().sideWidth || frame().width;
    const all = width / 2 - ((from + to) / 2) * pxPerM;
    if ((to - from) * pxPerM <= width) return { x0: all };
    const { t: times, p_WScm_W: p } = whole().poses;
    let i = 0;
    while (i < times.length - 1 && times[i] < cursor()) i++;
    const middle = width / 2 - way * p[3 * i] * pxPerM;
    return { x0: Math.round(Math.min(-from * pxPerM, Math.max(width - to * pxPerM, middle))) };
  });
  return range;
}

export function SidePicture(props: {
  state: WholeState;
  whole: WholeResult;
  frame: AirFrame;
  range: SideRange;
  width: number;
}) {
  const flight = useFlight();
  const others = createMemo((): WholeOther[] => {
    const window = props.state.window();
    if (!window || props.whole.legs[window.leg]?.swing === undefined) return [];
    const { ends } = studyWindow(window, props.state.asked());
    return (ends ?? []).flatMap((end, i): WholeOther[] => {
      // just outside: what fails there
      const one = tryNear(window.tries, end.ms + (i === 0 ? -1 : 1));
      if (!one || end.cause.kind === 'open') return [];
      const outcome = wordCause(end.cause);
      const isStop = end.cause.kind === 'rail';
      return [{ leg: window.leg, path: one.path, isEarly: i === 0, name: wordMs(end.ms), outcome, isStop }];
    });
  });
  const near = createMemo(() => {
    const k = props.whole.legs.findIndex(
      ({ nearest }) => nearest !== undefined && nearest.distance < props.state.asked(),
    );
    const found = props.whole.legs[k]?.nearest;
    if (!found) return undefined;
    const far = found.distance <= 0 ? '0' : say('length', Math.max(0.01, found.distance));
    const at = props.whole.legs[k].takeoff + found.t;
    return { leg: k, lines: [far, `${found.part} to ${found.solid}`, `at ${formatNumber(at, 2)} s`] };
  });
  const place = createMemo(() => ({
    width: props.width,
    height: props.frame.picture,
    pxPerM: props.frame.pxPerM,
    floorY: props.frame.picture,
    x0: props.range.x0,
  }));
  const still = createMemo(() => props.state.pictures()?.sideStill(props.whole, untrack(flight.result), place()) ?? '');
  const markup = createMemo(
    () =>
      props.state.pictures()?.side(props.whole, untrack(flight.result), {
        ...place(),
        t: props.state.cursor(),
        row: props.state.row(),
        words: {
          size: formatNumber(props.whole.columns.weights[props.state.row()], 1),
          force: t.forces[props.state.phase()?.kind ?? ''] ?? '',
          ownWeight: t.ownWeight,
        },
        others: others(),
        near: near(),
      }) ?? ['', ''],
  );
  return (
    <div class="side-picture" style={{ width: `${props.width}px`, height: `${props.frame.picture}px` }}>
      <svg width={props.width} height={props.frame.picture} role="img" aria-label={t.side}>
        {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
        <g innerHTML={markup()[0]} />
        {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
        <g innerHTML={still()} />
        {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
        <g innerHTML={markup()[1]} />
      </svg>
      <p class="stage-name">{t.side}</p>
    </div>
  );
}
