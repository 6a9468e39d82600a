/** How a moving picture is wanted, and the last that was made. Kept while the page is open, and offered while flight and ticks are those it was made of. */
import { type Accessor, createMemo, createResource, createSignal } from 'solid-js';
import type { Page } from '../../app/page.ts';
import type { MovingFormat, MovingPictures } from '../../moving-picture/moving-input.ts';
import type { MovingView } from '../../scene/moving-place.ts';
import type { PictureSize } from '../../scene/scene.ts';
import type { SizeName, Slower } from './moving-words.ts';

export const SIZES: Readonly<Record<SizeName, PictureSize>> = {
  wide: { width: 1280, height: 720 },
  small: { width: 640, height: 360 },
  square: { width: 1080, height: 1080 },
  tall: { width: 1080, height: 1920 },
};

interface MovingWish {
  readonly view: MovingView;
  readonly slower: Slower;
  readonly size: SizeName;
  readonly format: MovingFormat;
  readonly hasHeadline: boolean;
  readonly hasNumbers: boolean;
}

export interface MadeMoving {
  readonly name: string;
  readonly blob: Blob;
  /** of which flight and ticks it is: under others it is not offered */
  readonly of: string;
}

export interface MovingState {
  readonly wish: Accessor<MovingWish>;
  set(part: Partial<MovingWish>): void;
  /** s of the flight */
  readonly span: Accessor<readonly [from: number, to: number]>;
  setEdge(edge: 'from' | 'to', s: number): void;
  readonly room: Accessor<MovingPictures | undefined>;
  /** undefined: not known yet */
  readonly formats: Accessor<readonly MovingFormat[] | undefined>;
  /** the one that is written: the other where this browser cannot write what is wanted */
  readonly format: Accessor<MovingFormat | undefined>;
  readonly count: Accessor<{ readonly pictures: number; readonly lastsS: number } | undefined>;
  readonly made: Accessor<MadeMoving | undefined>;
  keep(made: MadeMoving): void;
}

const FIRST: MovingWish = {
  view: 'side',
  slower: '4',
  size: 'wide',
  format: 'mp4',
  hasHeadline: true,
  hasNumbers: false,
};

export function makeMovingState({ services, flight }: Page): MovingState {
  const [wish, setWish] = createSignal(FIRST);
  const [edges, setEdges] = createSignal<{ readonly from?: number; readonly to?: number }>({});
  const [made, keep] = createSignal<MadeMoving>();
  const [room] = createResource(() => services.load.moving());
  const roomOr = (): MovingPictures | undefined => (room.error ? undefined : room());
  const [formats] = createResource(
    () => {
      const there = roomOr();
      return there && { there, size: SIZES[wish().size] };
    },
    ({ there, size }) => there.formats(size),
  );
  const known = (): readonly MovingFormat[] | undefined => (formats.error ? undefined : formats());
  // of another skill the edges may be after its end
  const span = createMemo((): readonly [number, number] => {
    const end = flight.result().flight.duration;
    const { from = 0, to = end } = edges();
    return from < Math.min(to, end) ? [from, Math.min(to, end)] : [0, end];
  });
  return {
    wish,
    set: (part) => setWish({ ...wish(), ...part }),
    span,
    setEdge: (edge, s) => setEdges({ from: span()[0], to: span()[1], [edge]: Math.max(0, s) }),
    room: roomOr,
    formats: known,
    format: () => {
      const list = known();
      return list && (list.includes(wish().format) ? wish().format : list[0]);
    },
    count: () => {
      const [from, to] = span();
      return roomOr()?.count({ from, to, slower: Number(wish().slower) });
    },
    made,
    keep: (one) => keep(one),
  };
}
