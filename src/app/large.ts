/** The state of the large stage: open or not, camera, what is shown, what is measured. Metres of the picture plane. */
import { type Accessor, createMemo, createSignal, untrack } from 'solid-js';
import type { FlightResult } from '../engine/result.ts';
import type { LargeView } from '../scene/camera.ts';
import type { LargeLook, LargeShow } from '../scene/large-look.ts';
import type { MeasureKind, PlanePoint } from '../scene/measure.ts';
import type { FlightState } from './flight.ts';

/** px per m: a body fills the picture at most, a 10 m flight fits at least. */
const LEAST = 8;
const MOST = 1200;
const STROBES: readonly [number, number] = [3, 24];
/** height of the stage's own bar, px */
const BAR = 48;

export interface LargeStage {
  readonly isOpen: Accessor<boolean>;
  toggle(): void;
  /** undefined until the size of the picture is known */
  readonly look: Accessor<LargeLook | undefined>;
  resize(width: number, height: number): void;
  setView(view: LargeView): void;
  toggleFollow(): void;
  toggleShow(what: keyof LargeShow): void;
  setStrobes(n: number): void;
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
function fitFrame(result: FlightResult, view: LargeView, width: number, height: number): Frame {
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
  const up = view === 'top' ? span(upward) : span(upward, Math.min(0, flight.surfaceY) - 0.4);
  const pxPerM = Math.min(width / (across[1] - across[0]), (height - BAR) / (up[1] - up[0]), 320);
  // the bar of the stage covers the upper edge
  return { pxPerM, across: (across[0] + across[1]) / 2, up: (up[0] + up[1]) / 2 + BAR / 2 / pxPerM };
}

export function createLarge({ result, id }: Pick<FlightState, 'result' | 'id'>, cursor: Accessor<number>): LargeStage {
  const [isOpen, setOpen] = createSignal(false);
  const [size, setSize] = createSignal<readonly [number, number]>();
  const [view, setViewSignal] = createSignal<LargeView>('side');
  const [follow, setFollow] = createSignal(false);
  const [show, setShow] = createSignal<LargeShow>({
    path: true,
    ghosts: true,
    strobe: false,
    trails: false,
    arrows: true,
    sizes: true,
  });
  const [strobes, setStrobes] = createSignal(9);
  const [measuring, setMeasuring] = createSignal<MeasureKind>();
  const [points, setPoints] = createSignal<readonly PlanePoint[]>([]);
  // fitted once for a document, a view and a size: the picture holds still while the skill is edited
  const fitted = createMemo<Frame | undefined>(() => {
    const now = size();
    id();
    const kind = view();
    return now && untrack(() => fitFrame(result(), kind, ...now));
  });
  const [moved, setMoved] = createSignal<{ readonly from: Frame | undefined; readonly frame: Frame }>();
  const still = (): Frame | undefined => {
    const m = moved();
    return m && m.from === fitted() ? m.frame : fitted();
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
    return { view: view(), follow: follow(), ...f, show: show(), strobes: strobes(), ...measure };
  });
  const setFrame = (frame: Frame): void => {
    setMoved({ from: fitted(), frame });
  };
  const centre = (): Frame => framed() ?? { pxPerM: 100, across: 0, up: 1 };
  return {
    isOpen,
    toggle: () => setOpen(!isOpen()),
    look,
    resize: (width, height) => {
      const old = size();
      if (!old || old[0] !== width || old[1] !== height) setSize([width, height]);
    },
    setView: (next) => {
      setPoints([]);
      setViewSignal(next);
    },
    toggleFollow: () => setFollow(!follow()),
    toggleShow: (what) => {
      const next = { ...show(), [what]: !show()[what] };
      // full poses stand where ghosts would
      if (what === 'strobe' && next.strobe) setShow({ ...next, ghosts: false });
      else if (what === 'ghosts' && next.ghosts) setShow({ ...next, strobe: false });
      else setShow(next);
    },
    setStrobes: (n) => setStrobes(Math.min(Math.max(n, STROBES[0]), STROBES[1])),
    zoom: (factor, x, y) => {
      const { pxPerM, across, up } = centre();
      const next = Math.min(Math.max(pxPerM * factor, LEAST), MOST);
      const [w, h] = size() ?? [0, 0];
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
      const start = kind === 'tape' ? [at(-60, 0), at(60, 0)] : [at(60, 0), at(0, 0), at(40, 60)];
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
      const [w, h] = size() ?? [0, 0];
      return [across + (x - w / 2) / pxPerM, up - (y - h / 2) / pxPerM];
    },
  };
}
