/** Clip: one frame at a time under the plumb line, its instants on the ruler, and A over it. */
import { createMemo, createResource, onCleanup, onMount, Show } from 'solid-js';
import { FailedLine } from '../../app/failed-line.tsx';
import { usePage, useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { xOf } from '../../ui/plot/axis.ts';
import { ClipAir } from './clip-air.tsx';
import { ClipComb, ClipFilling } from './clip-comb.tsx';
import { ClipEmpty, ClipFaults, ClipLive, ClipRate, ClipWorking } from './clip-empty.tsx';
import { useClipKeys } from './clip-keys.ts';
import { makeClipAxis, placeOf, plateBox } from './clip-plan.ts';
import { ClipPlate } from './clip-plate.tsx';
import { type ClipDesk, useClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';
import { FilmAir, FilmSentence } from './film-frame.tsx';
import './clip.css';

export function ClipView(props: ToolProps) {
  const { shell } = usePage();
  const desk = useClipDesk();
  const [room, { refetch }] = createResource(desk.load);
  // anywhere on the page while this is what it shows
  const onDrop = (e: DragEvent): void => {
    const file = e.dataTransfer?.files[0];
    if (!file) return;
    e.preventDefault();
    desk.opening.open(file);
  };
  onMount(() => {
    window.addEventListener('drop', onDrop, true);
    if (desk.clip()) shell.takeUndo(desk.past.undoing);
    onCleanup(() => {
      window.removeEventListener('drop', onDrop, true);
      desk.time.play.pause();
      shell.takeUndo(undefined);
    });
  });
  const onKeyDown = useClipKeys(desk, () => document.querySelector<HTMLElement>('.clip-other-marks')?.focus());
  return (
    <div class="clip" data-state={desk.clip() ? 'open' : 'empty'}>
      <FilmSentence>{t.none}</FilmSentence>
      <Show when={room.error}>
        <FailedLine again={() => void refetch()}>{String(room.error?.message)}</FailedLine>
      </Show>
      <Show when={room.state === 'ready'}>
        <Shown {...props} desk={desk} onKeyDown={onKeyDown} />
      </Show>
    </div>
  );
}

type ShownProps = ToolProps & { desk: ClipDesk; onKeyDown: (e: KeyboardEvent) => void };

function Shown(props: ShownProps) {
  const isBench = (): boolean => props.device === 'bench';
  const width = (): number => (isBench() ? props.axis.width : props.width);
  const left = (): number => (isBench() ? props.timeLeft : 0);
  const hasTime = createMemo(() => props.desk.frames() !== undefined && !props.desk.isStill());
  const axis = createMemo<TimeAxis>(() =>
    hasTime() ? makeClipAxis(width(), props.desk.time.range(), !isBench()) : props.axis,
  );
  const place = () => placeOf(isBench(), props.height);
  const shape = (): number => {
    const facts = props.desk.clip()?.facts;
    return facts ? facts.width / facts.height : 16 / 9;
  };
  const box = createMemo(() =>
    plateBox(
      {
        x: left() + 24,
        y: place().comb,
        width: width() - 72,
        height: props.height - place().comb - place().foot,
      },
      shape(),
      left() + xOf(axis(), props.desk.time.at()),
    ),
  );
  const share = (): number => {
    const work = props.desk.opening.work();
    return work && work.of > 0 ? Math.min(1, work.frames / work.of) : 0;
  };
  return (
    <>
      <FilmAir>
        <ClipAir desk={props.desk} axis={axis()} left={left()} height={props.pictures ?? 0} />
      </FilmAir>
      <Show when={hasTime()}>
        <TakenFloor {...props} axis={axis()} />
        <ClipComb desk={props.desk} axis={axis()} left={left()} height={place().comb} isTouch={!isBench()} />
      </Show>
      <ClipFilling axis={props.axis} left={left()} share={share()} />
      <div
        class="clip-place"
        style={{ left: `${box().x}px`, top: `${box().y}px`, width: `${box().width}px`, height: `${box().height}px` }}
      >
        <Show when={props.desk.opening.live()} fallback={<Held {...props} box={box()} />}>
          {(live) => <ClipLive desk={props.desk} live={live()} />}
        </Show>
      </div>
      <div class="clip-said" style={{ left: `${box().x}px`, width: `${box().width}px`, top: `${box().y}px` }}>
        <ClipFaults desk={props.desk} />
        <ClipWorking desk={props.desk} />
        <Show when={props.desk.asksRate()}>
          <ClipRate desk={props.desk} />
        </Show>
      </div>
    </>
  );
}

function Held(props: ShownProps & { box: { readonly width: number; readonly height: number } }) {
  return (
    <Show when={props.desk.clip()} fallback={<ClipEmpty desk={props.desk} canDrop={props.device === 'bench'} />}>
      <ClipPlate desk={props.desk} width={props.box.width} height={props.box.height} />
    </Show>
  );
}

/** The ruler is that of the clip for as long as this is there. */
function TakenFloor(props: ShownProps & { axis: TimeAxis }) {
  const { floor } = useShell();
  // the state is the same for as long as the page is
  // eslint-disable-next-line solid/reactivity
  const { desk } = props;
  floor.take({
    axis: () => props.axis,
    label: t.ruler,
    at: desk.time.at,
    set: desk.time.setAt,
    moveBy: desk.time.moveBy,
    play: desk.time.play,
    onKeyDown: (e) => props.onKeyDown(e),
  });
  return null;
}
