/** The state of the large stage: open or not, camera, what is shown, what is measured. Metres of the picture plane. */
import { type Accessor, createMemo, createSignal, untrack } from 'solid-js';
import type { FlightResult } from '../engine/result.ts';
import type { LargeView } from '../scene/camera.ts';
import type { LargeLook, LargeShow } from '../scene/large-look.ts';
import type { MeasureKind, PlanePoint } from '../scene/measure.ts';
import type { FlightState } from './flight.ts';
import { keepRoom, type Room } from './steady-room.ts';

/** px per m: a body fills the picture at most, a 10 m flight fits at least. */
const LEAST = 8;
const MOST = 1200;
const STEPS: readonly [number, number] = [3, 24];
/** height of the stage's own bar, px */
const BAR = 48;
/** metres and the distance travelled, under the floor, px */
const FOOT = 56;
const NO_ROOM: Room = { width: 0, height: 0 };
/** a lower stage has room for the metres alone */
const LOW = { under: 320, foot: 34 } as const;

export interface LargeStage {
  readonly isOpen: Accessor<boolean>;
  toggle(): void;
  /** undefined until the size of the picture is known */
  readonly look: Accessor<LargeLook | undefined>;
  resize(width: number, height: number): void;
  setView(view: LargeView): void;
  toggleFollow(): void;
  toggleShow(what: keyof LargeShow): void;
  setSteps(n: number): void;
  /** keeps the point at (x, y) of the picture where it is */
  zoom(factor: number, x?: number, y?: number): void;
  pan(dx: number, dy: number): void;
  fit(): void;
  readonly measuring: Accessor<MeasureKind | undefined>;
  /** without a pointer the points start in the middle of the picture, to be moved by keys */
  measure(kind: MeasureKind | undefined, inMiddle?: boolean): void;
  setPoint(index: number, point: PlanePoint): void;
  /** the point of the picture plane at (x, y), m */
  planeAt(x: number, y: number): PlanePoint;
}

interface Frame {
  readonly pxPerM: number;
  readonly across: number;
  readonly up: number;
}

const wayOf = ({ flight }: FlightResult): 1 | -1 => (flight.v_WScm_W0[0] < -0.2 ? -1 : 1);

/** Column of frames.p_WScm_W and its sign along the screen's right and up (scene/view.ts). */
function axesOf(view: LargeView, way: 1 | -1): readonly [readonly [number, number], readonly [number, number]] {
  if (view === 'front')
    return [
      [2, -1],
      [1, 1],
    ];
  const right = [0, way] as const;
  return [right, view === 'side' ? [1, 1] : [2, -way]];
}

/** All of the flight and the body about it, in the middle. */
function fitFrame(result: FlightResult, view: LargeView, { width, height }: Room): Frame {
  const { flight, frames } = result;
  const margin = 0.75 * (flight.body.stature ?? 1.6);
  const [right, upward] = axesOf(view, wayOf(result));
  const span = ([column, sign]: readonly [number, number], low?: number): [number, number] => {
    let [a, b] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 0; i < frames.n; i++) {
      const v = sign * frames.p_WScm_W[3 * i + column];
      a = Math.min(a, v);
      b = Math.max(b, v);
    }
    return [Math.min(a - margin, low ?? a - margin), b + margin];
  };
  const across = span(right);
  const up = view === 'top' ? span(upward) : span(upward, Math.min(0, flight.surfaceY));
  const foot = height < LOW.under ? LOW.foot : FOOT;
  const pxPerM = Math.min(width / (across[1] - across[0]), (height - BAR - foot) / (up[1] - up[0]), 320);
  // the bar of the stage covers the upper edge
  return { pxPerM, across: (across[0] + across[1]) / 2, up: (up[0] + up[1]) / 2 + (BAR - foot) / 2 / pxPerM };
}

export function createLarge({ result, id }: Pick<FlightState, 'result' | 'id'>, cursor: Accessor<number>): LargeStage {
  const [isOpen, setOpen] = createSignal(false);
  const [size, setSize] = createSignal<Room>();
  const [view, setViewSignal] = createSignal<LargeView>('side');
  const [follow, setFollow] = createSignal(false);
  const [show, setShow] = createSignal<LargeShow>({
    path: true,
    before: true,
    everyStep: false,
    paths: false,
    arrows: true,
    sizes: true,
  });
  const [steps, setSteps] = createSignal(9);
  const [measuring, setMeasuring] = createSignal<MeasureKind>();
  const [points, setPoints] = createSignal<readonly PlanePoint[]>([]);
  const shown = createMemo(() => `${id()} ${view()}`);
  const room = createMemo<{ readonly of: string; readonly room: Room } | undefined>((last) => {
    const now = size();
    const of = shown();
    return now && { of, room: keepRoom(last?.of === of ? last.room : undefined, now) };
  });
  // fitted once for a document, a view and a room: the picture holds still while the skill is edited
  const fitted = createMemo<Frame | undefined>(() => {
    const now = room();
    return now && untrack(() => fitFrame(result(), view(), now.room));
  });
  /** where a hand brought it: whatever the room becomes, until the whole is asked for */
  const [moved, setMoved] = createSignal<{ readonly of: string; readonly frame: Frame }>();
  const still = (): Frame | undefined => {
    const m = moved();
    return m?.of === shown() ? m.frame : fitted();
  };
  const framed = createMemo<Frame | undefined>(() => {
    const f = still();
    if (!f || !follow()) return f;
    const { flight } = result();
    const [p, v] = [new Float64Array(3), new Float64Array(3)];
    flight.massCentreInto(cursor(), p, v);
    const [[a, sa], [b, sb]] = axesOf(view(), wayOf(result()));
    return { pxPerM: f.pxPerM, across: sa * p[a], up: sb * p[b] };
  });
  const look = createMemo<LargeLook | undefined>(() => {
    const f = framed();
    const kind = measuring();
    if (!f) return undefined;
    const measure = kind ? { measure: { kind, points: points() } } : {};
    return { view: view(), follow: follow(), ...f, show: show(), steps: steps(), ...measure };
  });
  const setFrame = (frame: Frame): void => {
    setMoved({ of: shown(), frame });
  };
  const centre = (): Frame => framed() ?? { pxPerM: 100, across: 0, up: 1 };
  return {
    isOpen,
    toggle: () => setOpen(!isOpen()),
    look,
    resize: (width, height) => {
      const old = size();
      if (old?.width !== width || old.height !== height) setSize({ width, height });
    },
    setView: (next) => {
      setPoints([]);
      if (next !== view()) setMoved(undefined);
      setViewSignal(next);
    },
    toggleFollow: () => setFollow(!follow()),
    toggleShow: (what) => {
      const next = { ...show(), [what]: !show()[what] };
      // full poses are drawn where the figures behind would be
      if (what === 'everyStep' && next.everyStep) setShow({ ...next, before: false });
      else if (what === 'before' && next.before) setShow({ ...next, everyStep: false });
      else setShow(next);
    },
    setSteps: (n) => setSteps(Math.min(Math.max(n, STEPS[0]), STEPS[1])),
    zoom: (factor, x, y) => {
      const { pxPerM, across, up } = centre();
      const next = Math.min(Math.max(pxPerM * factor, LEAST), MOST);
      const { width: w, height: h } = size() ?? NO_ROOM;
      const [dx, dy] = [(x ?? w / 2) - w / 2, (y ?? h / 2) - h / 2];
      const held = 1 / pxPerM - 1 / next;
      setFrame({ pxPerM: next, across: across + dx * held, up: up - dy * held });
    },
    pan: (dx, dy) => {
      const { pxPerM, across, up } = centre();
      setFrame({ pxPerM, across: across - dx / pxPerM, up: up + dy / pxPerM });
    },
    fit: () => {
      setMoved(undefined);
    },
    measuring,
    measure: (kind, inMiddle) => {
      const { pxPerM, across, up } = centre();
      const at = (dx: number, dy: number): PlanePoint => [across + dx / pxPerM, up + dy / pxPerM];
      const start = kind === 'length' ? [at(-60, 0), at(60, 0)] : [at(60, 0), at(0, 0), at(40, 60)];
      setPoints(kind && inMiddle ? start : []);
      setMeasuring(kind);
    },
    setPoint: (index, point) => {
      const next = [...points()];
      next[index] = point;
      setPoints(next);
    },
    planeAt: (x, y) => {
      const { pxPerM, across, up } = centre();
      const { width: w, height: h } = size() ?? NO_ROOM;
      return [across + (x - w / 2) / pxPerM, up - (y - h / 2) / pxPerM];
    },
  };
}
