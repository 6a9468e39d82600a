/** One student's sheet. */
import type { ClassRoomState } from './class-state.ts';
import { classTexts } from './words.ts';

export const AnswerView = (props: { room: ClassRoomState }) => (
  <section class="room-head">
    <h1>{props.room.worksheet()?.title ?? classTexts.views.answer}</h1>
  </section>
);
