/** Measured poses along time, and the computed one at the cursor over them. */
import { createMemo } from 'solid-js';
import type { RecordingPictureInput } from '../../pictures/recording-input.ts';
import type { RecordingRoom } from '../../pictures/recording-room.ts';
import { tOf, xOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { unitSystem } from '../../ui/units.ts';
import type { RecordingAxis } from './recording-axis.ts';
import type { RecordingState } from './recording-state.ts';
import { recordingTexts as t } from './recording-words.ts';

export function RecordingPicture(props: {
  state: RecordingState;
  room: RecordingRoom;
  axis: RecordingAxis;
  left: number;
  height: number;
}) {
  const input = createMemo<RecordingPictureInput>(() => {
    // x is called where the picture is made, in memos of this input
    const axis = props.axis;
    return {
      width: axis.width,
      height: props.height,
      left: axis.left,
      x: (s) => xOf(axis, s),
      units: unitSystem(),
    };
  });
  const still = createMemo(() => {
    const result = props.state.result();
    return result && props.height > 0 ? props.room.pictures.still(result, input()) : '';
  });
  const now = createMemo(() => {
    const result = props.state.result();
    return result && props.height > 0 ? props.room.pictures.now(result, input(), props.state.cursor()) : '';
  });
  const scrub = (e: PointerEvent): void =>
    startScrub(e, { play: props.state.play, at: props.state.cursor, set: props.state.setCursor }, (x) =>
      tOf(props.axis, x),
    );
  return (
    <div
      class="rec-picture"
      style={{ left: `${props.left}px`, width: `${props.axis.width}px`, height: `${props.height}px` }}
    >
      <svg width={props.axis.width} height={props.height} role="img" aria-label={t.picture} onPointerDown={scrub}>
        {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
        <g innerHTML={still()} />
        {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
        <g innerHTML={now()} />
      </svg>
      <p class="stage-name">
        {t.measured} <span>{props.state.result()?.computed ? t.computed : ''}</span>
      </p>
    </div>
  );
}
