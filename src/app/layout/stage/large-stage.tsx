/** The large stage in the place of the pictures: one canvas, moved by wheel, drag, pinch and keys; points to measure by. */
import { createEffect, createMemo, createResource, Index, onCleanup, onMount, Show } from 'solid-js';
import type { ViewPlace } from '../../../pictures/stage-input.ts';
import type { PlanePoint } from '../../../scene/measure.ts';
import { startDrag } from '../../../ui/drag.ts';
import { say, unitSystem } from '../../../ui/units.ts';
import { FailedLine } from '../../failed-line.tsx';
import { useServices, useShell } from '../../page.ts';
import { texts } from '../../words.ts';
import { usePinch } from './pinch.ts';
import { Stage } from './stage.tsx';
import { StageBar } from './stage-bar.tsx';
import { stageTexts } from './words.ts';

const t = stageTexts;
/** m an arrow key moves a point of the measure */
const STEP = 0.01;

export function LargeStageArea(props: { width: number; height: number }) {
  const shell = useShell();
  const services = useServices();
  let root!: HTMLDivElement;
  const large = () => shell.large;
  const [pictures, { refetch }] = createResource(services.load.large);
  const drawn = () => (pictures.state === 'ready' ? pictures() : undefined);
  createEffect(() => large().resize(props.width, props.height));
  const views = createMemo<ViewPlace[]>(() => {
    const look = large().look();
    const painter = drawn();
    if (!look || !painter) return [];
    const [width, height] = [props.width, props.height];
    return [
      {
        kind: 'large',
        x: 0,
        y: 0,
        width,
        height,
        floorY: 0,
        pxPerM: look.pxPerM,
        x0: 0,
        pxPerS: 0,
        ghosts: 0,
        look,
        large: painter,
      },
    ];
  });
  const at = (e: { clientX: number; clientY: number }): [number, number] => {
    const { left, top } = root.getBoundingClientRect();
    return [e.clientX - left, e.clientY - top];
  };
  const wheel = (e: WheelEvent): void => {
    e.preventDefault();
    if (e.shiftKey) large().pan(-e.deltaY - e.deltaX, 0);
    else large().zoom(1.0015 ** -e.deltaY, ...at(e));
  };
  // the page must not scroll or zoom under it: not a listener that Solid may make passive
  onMount(() => {
    root.addEventListener('wheel', wheel, { passive: false });
    onCleanup(() => root.removeEventListener('wheel', wheel));
  });
  const pinch = usePinch({
    pan: (dx, dy) => large().pan(dx, dy),
    zoom: (factor, x, y) => large().zoom(factor, ...at({ clientX: x, clientY: y })),
  });
  const wordMeasured = (): string => {
    const measure = large().look()?.measure;
    return (measure && drawn()?.wordMeasure(measure, unitSystem())) ?? '';
  };
  const points = (): readonly PlanePoint[] => large().look()?.measure?.points ?? [];
  const wanted = (): number => (large().measuring() === 'angle' ? 3 : 2);
  const spot = ([u, v]: PlanePoint): [number, number] => {
    const look = large().look();
    if (!look) return [0, 0];
    return [props.width / 2 + (u - look.across) * look.pxPerM, props.height / 2 - (v - look.up) * look.pxPerM];
  };
  /** A press puts the next point; with all of them there the nearest is taken along. */
  const put = (e: PointerEvent): void => {
    e.preventDefault();
    e.stopPropagation();
    const here = large().planeAt(...at(e));
    const list = points();
    let index = list.length;
    if (index >= wanted()) {
      const far = (p: PlanePoint): number => Math.hypot(p[0] - here[0], p[1] - here[1]);
      index = list.reduce((best, p, i) => (far(p) < far(list[best]) ? i : best), 0);
    }
    large().setPoint(index, here);
    // a length is drawn out in one go
    const drawn = large().measuring() === 'length' && list.length === 0 ? 1 : index;
    startDrag(e, {
      move: (_dx, _dy, m) => large().setPoint(drawn, large().planeAt(...at(m))),
      end: () => {},
      cancel: () => {},
    });
  };
  const onPointKey = (index: number, e: KeyboardEvent): void => {
    const step = STEP * (e.shiftKey ? 10 : 1);
    const move: Record<string, [number, number]> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, step],
      ArrowDown: [0, -step],
    };
    const d = move[e.key];
    if (!d) return;
    e.preventDefault();
    e.stopPropagation();
    const [u, v] = points()[index];
    large().setPoint(index, [u + d[0], v + d[1]]);
  };
  return (
    <div class="large-stage" ref={root} style={{ width: `${props.width}px`, height: `${props.height}px` }}>
      <Stage width={props.width} height={props.height} views={views()} onFree={pinch}>
        <Show when={large().measuring()}>
          <div class="measure-plane" onPointerDown={put}>
            {/* by place: a point that moves keeps its button and the focus on it */}
            <Index each={points()}>
              {(point, i) => (
                <button
                  type="button"
                  class="measure-point"
                  aria-label={`${t.place(i)}: ${t.placeAt(say('length', point()[0]), say('length', point()[1]))}`}
                  style={{ left: `${spot(point())[0]}px`, top: `${spot(point())[1]}px` }}
                  onKeyDown={(e) => onPointKey(i, e)}
                />
              )}
            </Index>
          </div>
        </Show>
        <Show when={pictures.error}>
          <FailedLine again={() => void refetch()}>{texts.panelFailed}</FailedLine>
        </Show>
        <StageBar large={large()} />
        <Show when={large().measuring()}>
          {(kind) => (
            <p class="measure-hint" role="status">
              {points().length < wanted() ? (kind() === 'length' ? t.lengthHint : t.angleHint) : wordMeasured()}
            </p>
          )}
        </Show>
      </Stage>
    </div>
  );
}
