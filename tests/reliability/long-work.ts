/** Long work on the page: how much of it, and by how much what is alive may differ from one equal round to a later one. Measured on 2026-11-30. */
import { isWhole } from '../corpus.ts';

/** Of each: small edits (keys, drags, typed values, undo, redo), switches of views, rows, colours, layouts, play, and openings of tools and panels with all their tabs. */
export const roundOfWork = isWhole
  ? { rounds: 10, edits: 100, switches: 50, openings: 32 }
  : { rounds: 3, edits: 20, switches: 12, openings: 8 };

interface CountBound {
  readonly what: string;
  /** most by which the last round may exceed the second */
  readonly most: number;
  readonly measured: string;
}

/** The first round loads the tools; from the second on nothing more comes. */
export const countBounds: readonly CountBound[] = [
  { what: 'window listeners', most: 0, measured: '24 in each of 6 rounds' },
  { what: 'document listeners', most: 0, measured: '9 in each' },
  { what: 'media listeners', most: 0, measured: '8 in each' },
  { what: 'ResizeObserver', most: 0, measured: '12 in each' },
  { what: 'MutationObserver', most: 0, measured: '1 in each' },
  { what: 'IntersectionObserver', most: 0, measured: 'none' },
  { what: 'BroadcastChannel', most: 0, measured: '1 in each' },
  { what: 'AudioContext', most: 0, measured: 'none' },
  { what: 'VideoFrame', most: 0, measured: 'none' },
  { what: 'ImageBitmap', most: 0, measured: 'none' },
  { what: 'GPU objects', most: 0, measured: 'none: a browser without a graphics card draws on canvases' },
  { what: 'object URLs', most: 0, measured: 'none' },
  { what: 'intervals', most: 0, measured: 'none' },
  { what: 'databases', most: 0, measured: '2 in each' },
  { what: 'documents', most: 0, measured: '2 in each' },
  { what: 'frames', most: 0, measured: '1 in each' },
  { what: 'frames asked for when idle', most: 0, measured: '0 in each' },
  { what: 'nodes in the page', most: 2, measured: '1047 in each' },
  { what: 'local storage, bytes', most: 0, measured: '23 in each' },
  { what: 'canvas', most: 24, measured: '24 in each; some wait for a later collection' },
  { what: 'nodes', most: 900, measured: '6112 to 6630 over 6 rounds; before, 6112 6571 7408 8647 and on' },
  { what: 'listeners', most: 100, measured: '116 to 181, three for each worker that waits for its end' },
  {
    what: 'heap, kB',
    most: isWhole ? 12_000 : 4000,
    measured:
      'whole, 2026-12-01: 21.9 24.0 25.1 25.8 27.3 27.8 28.0 28.3 28.4 29.1 MB; what grows is code that the browser compiles',
  },
];

/** Pools of the page and what each may have; they end their workers after 30 s of rest. */
export const MOST_WORKERS = 24;
