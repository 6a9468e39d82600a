/** What hangs from the line: the clip, or what is in its place; and what is said over it. */
import { Match, Show, Switch } from 'solid-js';
import { ClipEmpty, ClipFaults, ClipLive, ClipRate, ClipWorking } from './clip-empty.tsx';
import { ClipPlate } from './clip-plate.tsx';
import type { ClipDesk } from './clip-state.ts';

interface HangBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function ClipHang(props: { desk: ClipDesk; box: HangBox; canDrop: boolean }) {
  return (
    <div
      class="clip-place"
      style={{
        left: `${props.box.x}px`,
        top: `${props.box.y}px`,
        width: `${props.box.width}px`,
        height: `${props.box.height}px`,
      }}
    >
      <Switch fallback={<ClipEmpty desk={props.desk} canDrop={props.canDrop} />}>
        <Match when={props.desk.opening.live()}>{(live) => <ClipLive desk={props.desk} live={live()} />}</Match>
        <Match when={props.desk.clip()}>
          <ClipPlate desk={props.desk} width={props.box.width} height={props.box.height} />
        </Match>
      </Switch>
      <div class="clip-over">
        <ClipFaults desk={props.desk} />
        <ClipWorking desk={props.desk} />
        <Show when={props.desk.asksRate()}>
          <ClipRate desk={props.desk} />
        </Show>
      </div>
    </div>
  );
}

/** Share of the frames that are on their way. */
export function readShare(desk: ClipDesk): number {
  const work = desk.opening.work();
  return work && work.of > 0 ? Math.min(1, work.frames / work.of) : 0;
}
