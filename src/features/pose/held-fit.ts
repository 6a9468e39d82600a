/** How large the athlete is held: all shapes of the flight fit, and while a hand is at work nothing grows or shrinks. */
import { type Accessor, createMemo } from 'solid-js';
import type { Page } from '../../app/page.ts';
import type { HeldPicture } from '../../pictures/stage-input.ts';

interface HeldFit {
  readonly pxPerM: number;
  /** px of the mass centre from the top */
  readonly centreY: number;
}

/** px per m that extents are measured at */
const MEASURED = 100;
const EDGE = 7;
/** and of a fit that stays */
const LEAST_EDGE = 4;
/** Share of a change of size that is taken up at once; less is left as it is. */
const WORTH = 1.02;

interface Room {
  readonly width: number;
  readonly height: number;
  /** px from the figure's middle to the nearer side */
  readonly beside: number;
}

/** Up, down and across from the mass centre over the shapes of the flight, m. */
interface Extent {
  readonly up: number;
  readonly down: number;
  readonly across: number;
}

/** The last fit stays while it is as large as what is shown now needs, and holds it. */
export function fitHeld({ up, down, across }: Extent, { height, beside }: Room, last?: HeldFit): HeldFit {
  const pxPerM = Math.max(Math.min((height - 2 * EDGE) / (up + down), (beside - EDGE) / across), 20);
  const holds = ({ centreY, pxPerM: scale }: HeldFit): boolean =>
    Math.min(centreY - up * scale, height - centreY - down * scale) >= LEAST_EDGE;
  if (last && Math.abs(Math.log(pxPerM / last.pxPerM)) < Math.log(WORTH) && holds(last)) return last;
  return { pxPerM, centreY: EDGE + up * pxPerM + Math.max(0, height - 2 * EDGE - (up + down) * pxPerM) / 2 };
}

/** `ghostS`: what is drawn pale behind each shape, s; it may reach further than any shape does. */
export function useHeldFit(
  page: Page,
  room: () => Room,
  azimuths: () => readonly number[],
  ghostS: () => number | undefined = () => undefined,
): Accessor<HeldFit> {
  const { flight, services, doc } = page;
  const extent = createMemo<Extent | undefined>((last) => {
    if (last && doc.isHeld()) return last;
    const result = flight.result();
    const { duration } = result.flight;
    const times = flight.spans().flatMap(({ from, to }) => [from, to].map((t) => Math.min(Math.max(t, 0), duration)));
    const ghost = ghostS();
    const most = { up: 0.1, down: 0.1, across: 0.1 };
    const take = (picture: Pick<HeldPicture, 'limbs'>): void => {
      for (const piece of picture.limbs.flatMap(({ outline }) => outline))
        for (let i = 0; i < piece.length; i += 2) {
          most.across = Math.max(most.across, Math.abs(piece[i]) / MEASURED);
          most.up = Math.max(most.up, -piece[i + 1] / MEASURED);
          most.down = Math.max(most.down, piece[i + 1] / MEASURED);
        }
    };
    for (const t of new Set([0, ...times, duration]))
      for (const azimuth of azimuths()) {
        const at = { result, azimuth, width: 0, height: 0, pxPerM: MEASURED, centreY: 0 };
        const angles = services.posing.anglesAt(result, t);
        take(services.pictures.held({ ...at, angles }));
        if (ghost === undefined) continue;
        const camera = services.posing.hold(result.flight.body, angles);
        take(services.pictures.held({ ...at, angles: services.posing.anglesAt(result, ghost), camera }));
      }
    return most;
  });
  return createMemo<HeldFit>((last) => {
    const at = room();
    if (last && doc.isHeld()) return last;
    return fitHeld(extent() ?? { up: 1, down: 1, across: 1 }, at, last);
  });
}
