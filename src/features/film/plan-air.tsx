/** Over the floor: the camera as it is typed, poses along the ruler as it sees them, and its own picture. */
import { createMemo, For, Show } from 'solid-js';
import type { FilmCamera, FilmingPlan } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import { unitSystem } from '../../ui/units.ts';
import { FilmAir } from './film-frame.tsx';
import { PlanFields } from './plan-fields.tsx';
import type { PlanState } from './plan-state.ts';
import { planTexts as t } from './plan-words.ts';

/** px round the bench */
const EDGE = 20;

interface AirProps {
  tool: ToolProps;
  state: PlanState;
  camera: FilmCamera;
  plan: FilmingPlan | undefined;
}

export function PlanAir(props: AirProps) {
  const height = (): number => props.tool.pictures ?? 0;
  const isBench = (): boolean => props.tool.device === 'bench';
  const timeLeft = (): number => (isBench() ? props.tool.timeLeft : 0);
  /** the picture has the shape of the camera's, and is as high as the air or as broad as there is room */
  const room = (): number =>
    isBench() ? props.tool.width - timeLeft() - props.tool.axis.width - EDGE - 4 : props.tool.width - 2 * EDGE;
  const own = createMemo(() => {
    const shape = props.camera.width / props.camera.height;
    const width = Math.min(room(), height() * shape);
    return { width: Math.round(width), height: Math.round(width / shape) };
  });
  return (
    <Show when={height() > 0}>
      <FilmAir>
        <Show when={isBench()}>
          <div
            class="plan-fields-place"
            style={{ width: `${timeLeft() - 10 - EDGE}px`, '--row': `${Math.min(25, (height() - 8) / 8)}px` }}
          >
            <PlanFields {...props} />
          </div>
          <Show when={props.plan}>
            {(plan) => (
              <div class="plan-along" style={{ left: `${timeLeft()}px`, width: `${props.tool.axis.width}px` }}>
                <Along {...props} plan={plan()} height={height()} />
              </div>
            )}
          </Show>
        </Show>
        <Show when={props.plan}>
          {(plan) => (
            <div
              class="plan-own"
              style={{
                ...(isBench() ? { right: `${EDGE}px` } : { left: `${(props.tool.width - own().width) / 2}px` }),
                width: `${own().width}px`,
                height: `${own().height}px`,
              }}
            >
              <Own state={props.state} plan={plan()} width={own().width} height={own().height} />
            </div>
          )}
        </Show>
      </FilmAir>
    </Show>
  );
}

function Along(props: AirProps & { plan: FilmingPlan; height: number }) {
  const flight = useFlight();
  const cursor = useCursor();
  const high = (): number => props.plan.room.high[1] - props.plan.stand.floorY;
  const pxPerM = (): number => (props.height - 26) / Math.max(1, high());
  const place = createMemo(() => {
    const scale = pxPerM();
    const axis = props.tool.axis;
    const [bottom] = [props.height];
    return { x: (s: number) => xOf(axis, s), y: (m: number) => bottom - m * scale, pxPerM: scale };
  });
  const still = createMemo(() => props.state.parts()?.pictures.alongStill(flight.result(), props.plan, place()) ?? '');
  const now = createMemo(
    () => props.state.parts()?.pictures.alongNow(flight.result(), props.plan, cursor.at(), place()) ?? '',
  );
  const marks = createMemo(() => {
    const { unit, perUnitM } = unitSystem().lengthMarks;
    const every = perUnitM < 0.5 ? 3 : 1;
    const out: { y: number; text: string }[] = [];
    for (let k = every; k * perUnitM < high(); k += every)
      out.push({ y: place().y(k * perUnitM), text: `${k} ${unit}` });
    return out;
  });
  const deg = (): string => `${formatNumber(Math.abs(props.camera.offSquare * DEG), 0)}°`;
  const title = (): string => (deg() === '0°' ? t.asSeenSquare : t.asSeen(deg()));
  return (
    <svg width={props.tool.axis.width} height={props.height} role="img" aria-label={title()}>
      <For each={marks()}>
        {(mark) => (
          <>
            <line class="plan-hair" x1={xOf(props.tool.axis, 0)} x2={props.tool.axis.width} y1={mark.y} y2={mark.y} />
            <text class="plan-tick" x={xOf(props.tool.axis, 0) - 8} y={mark.y + 4} text-anchor="end">
              {mark.text}
            </text>
          </>
        )}
      </For>
      {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
      <g innerHTML={still()} />
      {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
      <g innerHTML={now()} />
      <text class="plan-name" x={xOf(props.tool.axis, 0)} y={16}>
        {title()}
      </text>
    </svg>
  );
}

function Own(props: { state: PlanState; plan: FilmingPlan; width: number; height: number }) {
  const flight = useFlight();
  const cursor = useCursor();
  const pictures = () => props.state.parts()?.pictures;
  const still = createMemo(() => pictures()?.ownStill(flight.result(), props.plan, props.width) ?? '');
  const now = createMemo(() => pictures()?.ownNow(flight.result(), props.plan, cursor.at(), props.width) ?? '');
  // the room is computed for the camera that was, not for one that is still dragged
  const room = createMemo(() => (props.state.stale() ? '' : (pictures()?.ownRoom(props.plan, props.width) ?? '')));
  return (
    <svg
      width={props.width}
      height={props.height}
      role="img"
      aria-label={t.ownSpoken(`${formatNumber(cursor.at(), 2)} s`, props.plan.picture.leaves.length === 0)}
    >
      {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
      <g innerHTML={still()} />
      {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
      <g innerHTML={now()} />
      {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
      <g innerHTML={room()} />
      <text class="plan-name" x={9} y={17}>
        {t.own}
      </text>
    </svg>
  );
}
