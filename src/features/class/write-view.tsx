/** A worksheet that is written, for the open skill. */
import type { ClassRoomState } from './class-state.ts';
import { classTexts } from './words.ts';

export const WriteView = (_: { room: ClassRoomState }) => (
  <section class="room-head">
    <h1>{classTexts.views.write}</h1>
  </section>
);
