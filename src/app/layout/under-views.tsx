/** Under the other views of the air: metres under the side view, and the view from above. */
import { createMemo, type JSX, Show } from 'solid-js';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { Metres } from '../../features/ruler/floor.tsx';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import type { StageFit } from '../stage-fit.ts';
import type { GroundPlan } from './ground-plan.ts';
import { Stage } from './stage/stage.tsx';
import { StageNames } from './stage/stage-names.tsx';

/** px under the floor for the metres */
const METRES = 24;
/** px of the values beside the view from above */
const BESIDE = 122;

export function UnderViews(props: { plan: GroundPlan; lanes: LaneList; width: number; fit: StageFit }): JSX.Element {
  const height = (): number => {
    const last = props.lanes.shown().at(-1)?.id ?? 'shapes';
    const box = props.plan.boxes.get(last) ?? props.plan.boxes.get('shapes') ?? { y: 0, height: 60 };
    return Math.min(box.y + box.height + 4, 190) - METRES;
  };
  const width = (): number => props.width - BESIDE;
  const views = createMemo<ViewPlace[]>(() => [
    {
      kind: 'top',
      x: 0,
      y: 0,
      width: width(),
      height: height(),
      floorY: height() / 2 + 6,
      pxPerM: props.fit.pxPerM,
      pxPerS: 0,
      x0: props.fit.sideX0,
      ghosts: 2,
    },
  ]);
  return (
    <div class="under-views" style={{ left: `${BESIDE}px`, width: `${width()}px` }}>
      <Metres x0={props.fit.sideX0} pxPerM={props.fit.pxPerM} width={width()} height={METRES} />
      <Show when={props.plan.isBench}>
        <div class="top-view">
          <Stage width={width()} height={height()} views={views()}>
            <StageNames views={views()} />
          </Stage>
        </div>
      </Show>
    </div>
  );
}
