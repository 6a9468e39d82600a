/** The air of the bench: what comes before, the flight unrolled along the ruler, and at its right the athlete or the other views. */
import { createEffect, createMemo, createSignal, onCleanup, Show } from 'solid-js';
import { BeforeColumn } from '../../features/takeoff/fields.tsx';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import { Icon } from '../../ui/icon.tsx';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { putBeside } from '../../ui/plot/beside-line.ts';
import { FLIGHT_STRIP, LEFT } from '../bench-columns.ts';
import type { CutValues } from '../cut-values.ts';
import type { FirstStory } from '../first-rows.ts';
import { makeLate } from '../late.tsx';
import { loadPart } from '../load-part.ts';
import { useCursor, useFlight, useShell } from '../page.ts';
import { FREE, fitStage, type StageFit } from '../stage-fit.ts';
import { texts } from '../words.ts';
import { LargeStageArea } from './stage/late-large.ts';
import { Stage } from './stage/stage.tsx';
import { StageNames } from './stage/stage-names.tsx';
import { stageTexts } from './stage/words.ts';
import { FilledPlace } from './tools/filled-place.tsx';
import { findTool } from './tools/tool-list.ts';
import { unrolledPlace } from './unrolled-place.ts';

/** px of the front view */
export const FRONT = 122;
/** px right of the ruler, of the gap before the values: arms held wide at the landing reach there */
const REACH = 22;
/** px of the words that heights are compressed, and where they are */
const NOTE = { x: 130, long: 345 } as const;
/** px of the height labels */
export const LABELS = 46;
/** the large figure comes so long after the flight, ms */
const LARGE_AFTER_MS = 300;

const AirCut = makeLate(
  loadPart(
    () => import('./air-cut.tsx'),
    (m) => m.AirCut,
  ),
);

export function BenchAir(props: {
  story: FirstStory;
  cut: CutValues;
  axis: TimeAxis;
  fit: StageFit;
  width: number;
  height: number;
  cutX: number;
  cutWidth: number;
}) {
  const shell = useShell();
  const cursor = useCursor();
  const flight = useFlight();
  const hasViews = (): boolean => shell.rows.isOpen('views');
  const [hasSeenFlight, setSeenFlight] = createSignal(false);
  createEffect(() => {
    const timer = shell.stage.isDrawn() ? setTimeout(() => setSeenFlight(true), LARGE_AFTER_MS) : undefined;
    onCleanup(() => clearTimeout(timer));
  });
  const fills = (): boolean => findTool(shell.tool())?.fillsBench === true;
  const isTaken = (): boolean => shell.tool() === 'pose' || fills();
  /** clear of the plumb line */
  const noteX = (): number => putBeside(NOTE.x, NOTE.long, props.axis.width, xOf(props.axis, cursor.at())) ?? NOTE.x;
  const sideX = (): number => props.cutX - LEFT + FRONT;
  const views = createMemo<readonly ViewPlace[]>(() => {
    const common = {
      y: 0,
      height: props.height,
      floorY: props.height,
      pxPerM: props.fit.pxPerM,
      pxPerS: props.axis.pxPerS,
    };
    const air = unrolledPlace(props.axis, props.fit, {
      width: props.axis.width + REACH,
      height: props.height,
      labelX: LABELS - 24,
      ghosts: 5,
      unlabelled: !hasViews(),
      calm: !hasViews(),
      plumb: true,
    });
    // the athlete has the air, and the flight a strip of it
    if (shell.tool() === 'pose') {
      const strip = fitStage(flight.result(), { width: FREE, height: FLIGHT_STRIP }, 160);
      const place = { width: props.axis.width, height: FLIGHT_STRIP, labelX: LABELS - 24, ghosts: 5, plumb: true };
      return [{ ...unrolledPlace(props.axis, strip, { ...place, unlabelled: true }), y: props.height - FLIGHT_STRIP }];
    }
    // a tool has the place of what is at the right
    if (isTaken() || !hasViews()) return [air];
    return [
      air,
      { ...common, kind: 'front', x: props.cutX - LEFT, width: FRONT, x0: FRONT / 2, ghosts: 0 },
      { ...common, kind: 'side', x: sideX(), width: props.width - LEFT - sideX(), x0: props.fit.sideX0, ghosts: 4 },
    ];
  });
  return (
    <section class="air" style={{ height: `${props.height}px` }}>
      <Show when={fills()} fallback={<BeforeColumn />}>
        <FilledPlace name="before" style={{ width: `${LEFT}px` }} />
        <FilledPlace
          name="cut"
          style={{ left: `${LEFT + props.axis.width}px`, width: `${props.width - LEFT - props.axis.width}px` }}
        />
      </Show>
      <Show
        when={shell.large.isOpen()}
        fallback={
          <>
            <Stage
              width={props.width - LEFT}
              height={props.height}
              views={views()}
              timeAt={(x) => (x < props.axis.width ? tOf(props.axis, x) : undefined)}
            >
              <StageNames views={views()} bare />
              <Show when={(hasViews() || fills()) && props.fit.unrolledPxPerM > props.fit.pxPerM + 0.5}>
                <p class="compressed-note" style={{ left: `${noteX()}px` }}>
                  {texts.stage.compressed}
                </p>
              </Show>
            </Stage>
            <Show when={!hasViews() && !isTaken() && hasSeenFlight()}>
              <div class="air-cut" style={{ left: `${props.cutX}px`, width: `${props.cutWidth}px` }}>
                <AirCut story={props.story} cut={props.cut} width={props.cutWidth} height={props.height} />
              </div>
            </Show>
            <Show when={shell.tool() !== 'pose'}>
              <button
                type="button"
                class="plain square enlarge"
                style={{ left: `${LEFT + props.axis.width + REACH - 40}px` }}
                title={stageTexts.enlarge}
                aria-label={stageTexts.enlarge}
                onClick={() => shell.toggleLarge()}
              >
                <Icon name="enlarge" size={16} />
              </button>
            </Show>
          </>
        }
      >
        <LargeStageArea width={props.width - LEFT} height={props.height} />
      </Show>
      <p class="standing">{texts.standingCaution}</p>
    </section>
  );
}
