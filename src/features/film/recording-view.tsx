/** Recording: what was measured of a body, and whether the model agrees with it. */
import { createMemo, createResource, For, onCleanup, onMount, Show } from 'solid-js';
import { FailedLine } from '../../app/failed-line.tsx';
import { usePage, useShell } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import type { RecordingRoom } from '../../pictures/recording-room.ts';
import { FilmAir, FilmFloor, FilmSentence } from './film-frame.tsx';
import { RecordingApart } from './recording-apart.tsx';
import { makeRecordingAxis, type RecordingAxis } from './recording-axis.ts';
import { RecordingEmpty, RecordingFault, RecordingWork } from './recording-empty.tsx';
import { RecordingFacts } from './recording-facts.tsx';
import { RecordingJoints } from './recording-joints.tsx';
import { useRecordingKeys } from './recording-keys.ts';
import { RecordingMade } from './recording-made.tsx';
import { RecordingPicture } from './recording-picture.tsx';
import { RecordingRows } from './recording-rows.tsx';
import { RecordingSaid } from './recording-sentence.tsx';
import { RecordingSmoothing } from './recording-smoothing.tsx';
import { type RecordingState, useRecordingState } from './recording-state.ts';
import { AXES, sayAxis, valueAt } from './recording-values.ts';
import { RecordingVerdict } from './recording-verdict.tsx';
import { recordingTexts as t } from './recording-words.ts';
import './recording.css';

const GUTTER = 24;
/** px that rows of a touch page have whatever the sheet leaves */
const TOUCH_ROWS = 520;
const KEYS = 22;

export function RecordingView(props: ToolProps) {
  const { services } = usePage();
  const state = useRecordingState();
  const [room, { refetch }] = createResource(() => services.load.recording());
  // anywhere on the page while this is what it shows
  const onDrop = (e: DragEvent): void => {
    const file = e.dataTransfer?.files[0];
    if (!file) return;
    e.preventDefault();
    state.read(file);
  };
  onMount(() => {
    window.addEventListener('drop', onDrop, true);
    onCleanup(() => window.removeEventListener('drop', onDrop, true));
  });
  return (
    <div class="recording">
      <FilmSentence>
        <RecordingSaid state={state} />
      </FilmSentence>
      <Show when={room.error}>
        <FailedLine again={() => void refetch()}>{String(room.error?.message)}</FailedLine>
      </Show>
      <Show when={state.study()} fallback={<RecordingEmpty state={state} {...props} />}>
        <Show when={room.state === 'ready' && room()}>
          {(there) => <Shown {...props} state={state} room={there()} />}
        </Show>
      </Show>
    </div>
  );
}

type ShownProps = ToolProps & { state: RecordingState; room: RecordingRoom };

function Shown(props: ShownProps) {
  const { floor } = useShell();
  const isBench = (): boolean => props.device === 'bench';
  const study = () => props.state.study();
  const width = (): number => (isBench() ? props.axis.width : props.width);
  const axis = createMemo<RecordingAxis>(() => makeRecordingAxis(width(), study()?.t.at(-1) ?? 1, !isBench()));
  // the state is the same for as long as the page is
  // eslint-disable-next-line solid/reactivity
  const { state } = props;
  const onKeyDown = useRecordingKeys(state);
  floor.take({
    axis,
    label: t.time,
    at: state.cursor,
    set: state.setCursor,
    get play() {
      return state.play;
    },
    onKeyDown,
  });
  const left = (): number => (isBench() ? props.timeLeft : 0);
  const right = () => ({ x: left() + width() + GUTTER, width: props.width - left() - width() - GUTTER - 20 });
  const air = (): number => props.pictures ?? 0;
  return (
    <Show when={study()}>
      {(now) => (
        <>
          <FilmAir>
            <Show when={isBench()}>
              <div class="rec-left" style={{ width: `${left() - 10}px`, height: `${air()}px` }}>
                <RecordingFacts state={props.state} study={now()} height={air()} />
              </div>
            </Show>
            <RecordingPicture {...props} axis={axis()} left={left()} height={air()} />
            <Show when={isBench()}>
              {/* over the picture, so that nothing moves when it comes and goes */}
              <div class="rec-over-air" style={{ left: `${left()}px`, width: `${width()}px` }}>
                <RecordingFault state={props.state} />
                <RecordingWork state={props.state} />
              </div>
              <div
                class="rec-right-air"
                style={{ left: `${right().x}px`, width: `${right().width}px`, height: `${air()}px` }}
              >
                <RecordingJoints state={props.state} study={now()} height={air()} />
              </div>
            </Show>
          </FilmAir>
          <FilmFloor>
            <FloorNumbers state={props.state} />
          </FilmFloor>
          <Show
            when={isBench()}
            fallback={
              <div class="rec-touch">
                <RecordingFault state={props.state} />
                <RecordingWork state={props.state} />
                <RecordingVerdict study={now()} />
                <RecordingRows state={props.state} study={now()} axis={axis()} left={0} height={TOUCH_ROWS} />
                <RecordingApart study={now()} />
                <RecordingMade state={props.state} engine={props.room.engine} />
                <RecordingSmoothing state={props.state} study={now()} />
                <RecordingJoints state={props.state} study={now()} />
                <RecordingFacts state={props.state} study={now()} />
              </div>
            }
          >
            <RecordingRows state={props.state} study={now()} axis={axis()} left={left()} height={props.height - KEYS} />
            <p class="rec-keys quiet">
              <For each={t.keys}>{(key) => <span>{key}</span>}</For>
            </p>
            <div
              class="rec-side"
              style={{ left: `${right().x}px`, width: `${right().width + 12}px`, height: `${props.height}px` }}
            >
              {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls is scrolled by keys only when it has the focus */}
              <section class="rec-scroll" aria-label={t.side} tabIndex={0}>
                <RecordingVerdict study={now()} />
                <RecordingApart study={now()} />
                <RecordingSmoothing state={props.state} study={now()} />
              </section>
              <RecordingMade state={props.state} engine={props.room.engine} />
            </div>
          </Show>
        </>
      )}
    </Show>
  );
}

/** What was measured at the cursor, in the place of the flight's four numbers. */
function FloorNumbers(props: { state: RecordingState }) {
  const at = (name: (typeof AXES)[number]): string => {
    const study = props.state.study();
    const course = study?.test?.measured[name];
    return study && course ? sayAxis(name, valueAt(study.t, course, props.state.cursor())) : '–';
  };
  return (
    <Show when={props.state.study()?.test}>
      <dl class="rec-floor">
        <For each={AXES}>
          {(name) => (
            <div>
              <dt>{t.measuredOf(t[name].toLowerCase())}</dt>
              <dd>{at(name)}</dd>
            </div>
          )}
        </For>
      </dl>
    </Show>
  );
}
