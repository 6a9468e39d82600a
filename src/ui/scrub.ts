/** A press that puts a cursor where it is and takes it along; Escape puts it back. */
import { startDrag } from './drag.ts';

interface ScrubbedCursor {
  at(): number;
  set(s: number): void;
  readonly play: { pause(): void };
}

/** `timeAt`: from px right of the pressed element's left edge to s; undefined is no time, and moves nothing. */
export function startScrub(e: PointerEvent, cursor: ScrubbedCursor, timeAt: (x: number) => number | undefined): void {
  const { left } = (e.currentTarget as HTMLElement).getBoundingClientRect();
  const from = cursor.at();
  const put = (clientX: number): void => {
    const t = timeAt(clientX - left);
    if (t === undefined) return;
    cursor.play.pause();
    cursor.set(Math.round(t * 1000) / 1000);
  };
  startDrag(e, {
    start: () => put(e.clientX),
    move: (_x, _y, m) => put(m.clientX),
    end: () => {},
    cancel: () => cursor.set(from),
  });
}
