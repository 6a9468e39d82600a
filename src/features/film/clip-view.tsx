/** Clip: one frame at a time under the plumb line, its instants on the ruler, and A over it. */
import { createMemo, createResource, Match, onCleanup, onMount, Show, Switch } from 'solid-js';
import { FailedLine } from '../../app/failed-line.tsx';
import { usePage, useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { ClipAir } from './clip-air.tsx';
import { ClipBench } from './clip-bench.tsx';
import { useClipKeys } from './clip-keys.ts';
import { makeClipAxis } from './clip-plan.ts';
import { ClipSaid } from './clip-said.tsx';
import { ClipStacked, touchColumn } from './clip-stacked.tsx';
import { type ClipDesk, useClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';
import { FilmAir, FilmSentence } from './film-frame.tsx';
import './clip.css';

export function ClipView(props: ToolProps) {
  const { shell } = usePage();
  const desk = useClipDesk();
  const [room, { refetch }] = createResource(desk.load);
  shell.places.lowerAir();
  // anywhere on the page while this is what it shows
  const onDrop = (e: DragEvent): void => {
    const file = e.dataTransfer?.files[0];
    if (!file) return;
    e.preventDefault();
    e.stopPropagation();
    desk.opening.open(file);
  };
  onMount(() => {
    window.addEventListener('drop', onDrop, true);
    if (desk.clip()) shell.takeUndo(desk.past.undoing);
    onCleanup(() => {
      window.removeEventListener('drop', onDrop, true);
      desk.time.play.pause();
      // nothing is filmed unseen
      if (desk.opening.live()) desk.opening.cancel();
      shell.takeUndo(undefined);
    });
  });
  const onKeyDown = useClipKeys(desk, () => document.querySelector<HTMLElement>('.clip-other-marks')?.focus());
  return (
    <div class="clip" data-state={desk.clip() ? 'open' : 'empty'}>
      <FilmSentence>
        <ClipSaid desk={desk} isShort={props.device !== 'bench'} />
      </FilmSentence>
      <Show when={room.error}>
        <FailedLine again={() => void refetch()}>{String(room.error?.message)}</FailedLine>
      </Show>
      <Show when={room.state === 'ready'}>
        <Shown {...props} desk={desk} onKeyDown={onKeyDown} />
      </Show>
    </div>
  );
}

function Shown(props: ToolProps & { desk: ClipDesk; onKeyDown: (e: KeyboardEvent) => void }) {
  const isBench = (): boolean => props.device === 'bench';
  const width = (): number => (isBench() ? props.axis.width : props.width - touchColumn(props));
  const left = (): number => (isBench() ? props.timeLeft : 0);
  const hasTime = createMemo(() => props.desk.frames() !== undefined && !props.desk.isStill());
  const axis = createMemo<TimeAxis>(() =>
    hasTime()
      ? makeClipAxis(width(), props.desk.time.range(), !isBench(), !isBench() && touchColumn(props) === 0)
      : props.axis,
  );
  return (
    <>
      <FilmAir>
        <ClipAir desk={props.desk} axis={axis()} left={left()} height={props.pictures ?? 0} />
      </FilmAir>
      <Show when={hasTime()}>
        <TakenFloor desk={props.desk} axis={axis()} onKeyDown={props.onKeyDown} />
      </Show>
      <Switch>
        <Match when={isBench()}>
          <ClipBench {...props} clipAxis={axis()} hasTime={hasTime()} />
        </Match>
        <Match when={!isBench()}>
          <ClipStacked {...props} clipAxis={axis()} hasTime={hasTime()} />
        </Match>
      </Switch>
    </>
  );
}

/** The ruler is that of the clip for as long as this is there. */
function TakenFloor(props: { desk: ClipDesk; axis: TimeAxis; onKeyDown: (e: KeyboardEvent) => void }) {
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
