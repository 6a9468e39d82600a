/** Swing and landing of a whole skill, as readouts take them. */
import { placeIn } from '../math/sorted.ts';
import type { Whole } from '../skill/whole.ts';
import type { LandingPart, SwingPart } from './skill-result.ts';

/** What an estimate sheet may read of swing and landing, SI and radians; only what there is. */
export function partsOfWhole({ swing, landing }: Pick<Whole, 'swing' | 'landing'>): {
  readonly swing?: SwingPart;
  readonly landing?: LandingPart;
} {
  return {
    ...(swing ? { swing: readSwing(swing) } : {}),
    ...(landing?.kind === 'landed' ? { landing: readLanding(landing) } : {}),
  };
}

function readSwing({ columns: c, shown, rail, released }: NonNullable<Whole['swing']>): SwingPart {
  const cut = (column: Float64Array): Float64Array => column.slice(0, shown);
  const radius = new Float64Array(shown);
  let bottom: number | undefined;
  for (let i = 0; i < shown; i++) {
    const below = rail.height + c.railY[i] + c.armsY[i] - c.y[i];
    radius[i] = Math.hypot(c.x[i] - c.railX[i] - c.armsX[i], below);
    // the mass centre passes under the bar's rest place
    if (i > 0 && below > 0 && c.x[i - 1] * c.x[i] <= 0 && c.x[i - 1] !== c.x[i])
      bottom = c.t[i - 1] + ((c.t[i] - c.t[i - 1]) * c.x[i - 1]) / (c.x[i - 1] - c.x[i]);
  }
  return {
    times: cut(c.t),
    gripLoad: cut(c.grip),
    rate: cut(c.rate).map(Math.abs),
    centreSpeed: cut(c.speed),
    centreRadius: radius,
    ...(bottom === undefined ? {} : { bottom }),
    ...(released ? { release: c.t[shown - 1] } : {}),
  };
}

function readLanding({ run, report }: Extract<NonNullable<Whole['landing']>, { kind: 'landed' }>): LandingPart {
  const { brakeTime } = report;
  const times = run.t.slice(0, run.n);
  const load = run.fy.slice(0, run.n);
  if (brakeTime === undefined) return { times, load };
  const { i, share } = placeIn(run.t, brakeTime, run.n);
  const low = run.y[i] + share * (run.y[i + 1] - run.y[i]);
  return { times, load, stoppingTime: brakeTime, stoppingDistance: run.y[0] - low };
}
