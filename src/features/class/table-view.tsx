/** What a class handed in, as a table. */
import type { ClassRoomState } from './class-state.ts';
import { classTexts } from './words.ts';

export const TableView = (_: { room: ClassRoomState }) => (
  <section class="room-head">
    <h1>{classTexts.views.table}</h1>
  </section>
);
