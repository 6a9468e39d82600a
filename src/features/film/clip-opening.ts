/** A clip on its way in: read on this machine, with progress and a way to stop it; what fails leaves the one that is open. */
import { type Accessor, batch, createSignal } from 'solid-js';
import { pickFile } from '../../app/file-door.ts';
import { wordFileName } from '../../app/say/fault-words.ts';
import type { ClipFault, ClipReading, ClipSpan, OpenClip } from '../../clip/clip-source.ts';
import { clipTexts as t } from './clip-words.ts';

/** s of the file that are put on the ruler at once */
export const SPAN = 12;
const ACCEPT = 'video/*,image/*';

interface ClipWork {
  readonly name: string;
  readonly frames: number;
  /** frames to come, 0: not known yet */
  readonly of: number;
}

interface OpenedClip {
  readonly clip: OpenClip;
  readonly span: ClipSpan;
  /** s of the file, first and last on the ruler */
  readonly from: number;
  readonly to: number;
}

export interface ClipOpening {
  readonly opened: Accessor<OpenedClip | undefined>;
  readonly work: Accessor<ClipWork | undefined>;
  readonly fault: Accessor<string | undefined>;
  setFault(text: string | undefined): void;
  pick(): void;
  open(file: File): void;
  /** another stretch of a long clip */
  move(from: number): void;
  /** what is being read, and the camera: what it filmed is gone */
  cancel(): void;
  /** the camera of this machine, while it runs */
  readonly live: Accessor<MediaStream | undefined>;
  film(): void;
  stopFilm(): void;
}

const isFault = (error: unknown): error is ClipFault => error instanceof Error && error.name === 'ClipFault';
const wordFault = (error: unknown, name: string): string =>
  isFault(error)
    ? t.faults[error.code](name, error.what ?? '')
    : t.failed(name, error instanceof Error ? error.message : String(error));

/** `taken`: with the clip before it that is closed then; `moved`: the same clip, with other frames on the ruler. */
export function makeClipOpening(
  load: () => Promise<{ readonly reader: ClipReading }>,
  taken: (now: OpenedClip) => void,
  moved: (now: OpenedClip, before: OpenedClip) => void,
): ClipOpening {
  const [opened, setOpened] = createSignal<OpenedClip>();
  const [work, setWork] = createSignal<ClipWork>();
  const [fault, setFault] = createSignal<string>();
  const [live, setLive] = createSignal<MediaStream>();
  let stop: AbortController | undefined;
  let endFilm: (() => Promise<File>) | undefined;

  const cancel = (): void => {
    // ends a camera too
    stop?.abort();
    stop = undefined;
    endFilm = undefined;
    batch(() => {
      setWork(undefined);
      setLive(undefined);
    });
  };
  const begin = (name: string): AbortController => {
    cancel();
    const mine = new AbortController();
    stop = mine;
    batch(() => {
      setFault(undefined);
      setWork({ name, frames: 0, of: 0 });
    });
    return mine;
  };
  const fail = (mine: AbortController, error: unknown, name: string): void => {
    if (mine.signal.aborted) return;
    cancel();
    setFault(wordFault(error, name));
  };
  const putOn = async (clip: OpenClip, from: number, mine: AbortController): Promise<OpenedClip> => {
    const to = Math.min(clip.facts.lasts, from + SPAN);
    const of = Math.max(1, Math.round((to - from) * clip.facts.fileHz));
    setWork({ name: clip.facts.name, frames: 0, of });
    const span = await clip.span(
      from,
      to,
      (frames) => {
        if (stop === mine) setWork({ name: clip.facts.name, frames, of });
      },
      mine.signal,
    );
    return { clip, span, from, to: span.isCut ? (span.stamps.at(-1) ?? to) : to };
  };
  const open = async (file: File): Promise<void> => {
    const mine = begin(file.name);
    let clip: OpenClip | undefined;
    try {
      const { reader } = await load();
      clip = await reader.open(file, mine.signal);
      const now = await putOn(clip, 0, mine);
      if (mine.signal.aborted) throw mine.signal.reason;
      const before = opened();
      stop = undefined;
      batch(() => {
        setWork(undefined);
        setOpened(now);
        taken(now);
      });
      before?.clip.close();
    } catch (error) {
      clip?.close();
      fail(mine, error, wordFileName(file.name));
    }
  };
  const move = async (from: number): Promise<void> => {
    const before = opened();
    if (!before) return;
    const { facts } = before.clip;
    const start = Math.min(Math.max(from, 0), Math.max(0, facts.lasts - SPAN));
    if (start === before.from) return;
    const mine = begin(facts.name);
    try {
      const now = await putOn(before.clip, start, mine);
      if (mine.signal.aborted) return;
      stop = undefined;
      batch(() => {
        setWork(undefined);
        setOpened(now);
        moved(now, before);
      });
    } catch (error) {
      fail(mine, error, facts.name);
    }
  };
  const film = async (): Promise<void> => {
    const mine = begin(t.camera);
    try {
      const { reader } = await load();
      const { live: stream, stop: end } = await reader.film(mine.signal);
      if (mine.signal.aborted) {
        await end();
        return;
      }
      endFilm = end;
      batch(() => {
        setWork(undefined);
        setLive(() => stream);
      });
    } catch (error) {
      fail(mine, error, t.camera);
    }
  };
  const stopFilm = async (): Promise<void> => {
    const [end, mine] = [endFilm, stop];
    if (!end || !mine) return;
    endFilm = undefined;
    try {
      const file = await end();
      if (!mine.signal.aborted) await open(file);
    } catch (error) {
      fail(mine, error, t.camera);
    }
  };
  return {
    opened,
    work,
    fault,
    setFault,
    pick: () => pickFile((file) => void open(file), ACCEPT),
    open: (file) => void open(file),
    move: (from) => void move(from),
    cancel,
    live,
    film: () => void film(),
    stopFilm: () => void stopFilm(),
  };
}
