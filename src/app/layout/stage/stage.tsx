/** The pictures above the floor. The canvas is decoration for eyes; its meaning is said in words beside it. */

import { createSignal, getOwner, type JSX, runWithOwner, Show } from 'solid-js';
import type { StageGrip } from '../../../features/pose/stage-grip.ts';
import type { ViewPlace } from '../../../pictures/stage-input.ts';
import { drawOnFrame } from '../../../ui/frame.ts';
import { startScrub } from '../../../ui/scrub.ts';
import { unitSystem } from '../../../ui/units.ts';
import { makeLate } from '../../late.tsx';
import { loadPart } from '../../load-part.ts';
import { useMountedStage } from '../../mounted-stage.ts';
import { useCursor, useFlight, useShell } from '../../page.ts';
import { speakVerdict, wordLanding } from '../../say/sentence-words.ts';
import { useWholeState } from '../../whole-state.ts';
import { texts } from '../../words.ts';

/** When a pointer comes to the pictures. */
const loadGrip = loadPart(
  () => import('../../../features/pose/stage-grip.ts'),
  (m) => m.useStageGrip,
);
/** Of a limb under the mouse or at hand: not before there is one. */
const StageGripMarks = makeLate(
  loadPart(
    () => import('../../../features/pose/stage-marks.tsx'),
    (m) => m.StageGripMarks,
  ),
);

export function Stage(props: {
  width: number;
  height: number;
  views: readonly ViewPlace[];
  /** time at an x of the canvas, where a press brings the cursor; undefined: not on the unrolled flight */
  timeAt?: (x: number) => number | undefined;
  /** a press that took no limb and brought no cursor */
  onFree?: (e: PointerEvent) => void;
  children?: JSX.Element;
}) {
  const flight = useFlight();
  const cursor = useCursor();
  const shell = useShell();
  const whole = useWholeState();
  let canvas!: HTMLCanvasElement;
  const { handle, failed } = useMountedStage(
    () => canvas,
    () => [props.width, props.height],
  );
  drawOnFrame(flight.result, () =>
    handle()?.draw({
      result: flight.result(),
      cursorS: cursor.at(),
      width: props.width,
      height: props.height,
      views: props.views,
      units: unitSystem(),
      landing: wordLanding(flight.result().outline),
      extras: shell.stage.extras(),
    }),
  );
  const owner = getOwner();
  const [grip, setGrip] = createSignal<StageGrip>();
  const loadOnce = (): void => {
    if (grip()) return;
    void loadGrip().then(
      // eslint-disable-next-line solid/reactivity -- the owner of the stage is handed on: what it makes is tracked as if it were here
      (use) => {
        if (!grip()) setGrip(runWithOwner(owner, () => use(handle)));
      },
      // at the next pointer again
      () => undefined,
    );
  };
  const press = (e: PointerEvent): void => {
    const { left, top } = (e.currentTarget as HTMLElement).getBoundingClientRect();
    if (grip()?.press(e, e.clientX - left, e.clientY - top)) return;
    if (props.timeAt?.(e.clientX - left) === undefined) {
      props.onFree?.(e);
      return;
    }
    startScrub(e, cursor, (x) => props.timeAt?.(x));
  };
  return (
    <div
      class="stage"
      classList={{ grips: grip()?.hover() !== undefined }}
      onPointerDown={press}
      onPointerMove={(e) => {
        const { left, top } = e.currentTarget.getBoundingClientRect();
        loadOnce();
        grip()?.move(e, e.clientX - left, e.clientY - top);
      }}
      onPointerLeave={() => grip()?.leave()}
      style={{ width: `${props.width}px`, height: `${props.height}px` }}
    >
      <canvas
        ref={canvas}
        data-ready={handle() ? 'true' : undefined}
        role="img"
        aria-label={texts.stage.picture(texts.stage.unrolled, speakVerdict(whole.verdict()))}
        style={{ width: `${props.width}px`, height: `${props.height}px` }}
      />
      <Show when={failed()}>
        <div class="stage-failed" role="alert">
          <p>{texts.stage.noRenderer}</p>
          <p class="quiet">{failed()}</p>
        </div>
      </Show>
      {props.children}
      <Show when={(grip()?.hover() || grip()?.grip()) && grip()}>
        {(own) => <StageGripMarks grip={own()} handle={handle()} width={props.width} height={props.height} />}
      </Show>
    </div>
  );
}
