/** The joint lines on the ground of a laptop: names at the left, keys on the ruler, a caution where one is. */
import { createMemo, For, Show } from 'solid-js';
import { withoutSide } from '../../../sim/math/side.ts';
import type { Lane } from '../../document/lanes.ts';
import { LaneEditor } from '../../features/joints/lane-editor.tsx';
import { LaneKeys } from '../../features/joints/lane-keys.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { Icon, SideSign } from '../../ui/icon.tsx';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';
import { useFlight } from '../page.ts';
import type { Box } from '../plot/pen.ts';
import { wordJoint } from '../say/body-words.ts';

interface JointProps {
  readonly lanes: LaneList;
  readonly boxes: ReadonlyMap<string, Box>;
}

/** Rows are found by their names, so that they keep their place in the page while their values change. */
function useLaneRows(props: JointProps) {
  const ids = createMemo(() => props.lanes.shown().map((l) => l.id), [], {
    equals: (a, b) => a.join() === b.join(),
  });
  const lane = (id: string): Lane | undefined =>
    props.boxes.has(id) ? props.lanes.shown().find((l) => l.id === id) : undefined;
  const box = (id: string): Box => props.boxes.get(id) ?? { y: 0, height: 0 };
  return { ids, lane, box };
}

export function JointTitles(props: JointProps) {
  const { ids, lane, box } = useLaneRows(props);
  return (
    <For each={ids()}>
      {(id) => (
        <Show when={lane(id)}>
          {(l) => (
            <div class="row-title lane-title" style={{ top: `${box(id).y}px`, height: `${box(id).height}px` }}>
              <button
                type="button"
                class="lane-name"
                aria-expanded={props.lanes.open() === id}
                title={props.lanes.open() === id ? laneTexts.close : laneTexts.open}
                onClick={() => props.lanes.setOpen(props.lanes.open() === id ? undefined : id)}
              >
                <SideSign side={l().sign} />
                {wordJoint(id)}
              </button>
              <Show when={props.lanes.open() === id}>
                <LaneEditor
                  lane={l()}
                  chosen={props.lanes.key()}
                  choose={props.lanes.setKey}
                  close={() => props.lanes.setOpen(undefined)}
                />
              </Show>
            </div>
          )}
        </Show>
      )}
    </For>
  );
}

export function JointKeys(props: JointProps & { axis: TimeAxis }) {
  const flight = useFlight();
  const { ids, lane, box } = useLaneRows(props);
  // one sign a lane: the rest is in the list
  const cautions = createMemo(() => {
    const seen = new Set<string>();
    return flight.result().cautions.filter((one) => {
      const id = lane(one.angle)?.id ?? withoutSide(one.angle);
      return !seen.has(id) && seen.add(id);
    });
  });
  return (
    <>
      <For each={ids()}>
        {(id) => (
          <Show when={lane(id)}>
            {(l) => (
              <LaneKeys
                axis={props.axis}
                lane={l()}
                box={box(id)}
                open={props.lanes.open() === id}
                chosen={props.lanes.key()}
                choose={(i) => {
                  props.lanes.setOpen(id);
                  props.lanes.setKey(i);
                }}
              />
            )}
          </Show>
        )}
      </For>
      <For each={cautions()}>
        {(one) => (
          <Show when={lane(one.angle) ?? lane(withoutSide(one.angle))}>
            {(l) => (
              <span
                class="lane-caution"
                style={{ left: `${xOf(props.axis, one.t)}px`, top: `${box(l().id).y + 2}px` }}
                aria-hidden="true"
              >
                <Icon name="caution" size={16} />
              </span>
            )}
          </Show>
        )}
      </For>
    </>
  );
}
