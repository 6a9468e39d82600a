/** The release of a leg tried earlier and later, in plain numbers, with the way of the mass centre of each try. */
import {
  calcClearTime,
  calcFormerTime,
  calcReleaseWindow,
  type FlownLeg,
  type WholeContact,
} from '../../../sim/index.ts';
import { DEG, REV } from '../../../sim/math/angles.ts';
import type { WindowResult } from './leg-data.ts';

/** Points of a path. */
const POINTS = 24;

export function makeWindowResult(
  { whole, skill: { start } }: FlownLeg,
  leg: number,
  contact: WholeContact,
): WindowResult | undefined {
  const { swing, skill } = whole;
  if (!swing || !skill.target) return undefined;
  const found = calcReleaseWindow(skill, swing, { contact });
  const [p, v] = [new Float64Array(3), new Float64Array(3)];
  const tries = found.tries.flatMap(({ late, flight, over, twistOff, away, meets, nearest }) => {
    if (!flight) return [];
    const near = nearest?.distance;
    const down = flight.touchdown?.part;
    const [x0] = swing.stateAt(late).p_WScm_W;
    const path = new Float64Array(2 * POINTS);
    for (let i = 0; i < POINTS; i++) {
      flight.massCentreInto((flight.duration * i) / (POINTS - 1), p, v);
      path.set([x0 + p[0], p[1]], 2 * i);
    }
    return [
      {
        lateMs: late * 1000,
        overDeg: over * DEG,
        twistOff: twistOff / REV,
        upMPerS: flight.v_WScm_W0[1],
        airS: flight.duration,
        away,
        meets,
        ...(near === undefined ? {} : { nearM: near }),
        ...(down && down !== 'feet' ? { part: down } : {}),
        path,
      },
    ];
  });
  const clear = calcClearTime(found);
  const isByBand = whole.landing?.kind === 'landed' && whole.landing.report.ending.kind === 'tooFast';
  return {
    leg,
    baseMs: start.kind === 'swing' ? start.swing.late * 1000 : 0,
    tries,
    ...(clear === undefined ? {} : { clearMs: clear * 1000 }),
    fromMs: found.from * 1000,
    toMs: found.to * 1000,
    formerMs: calcFormerTime(found) * 1000,
    lostMs: found.tries.filter(({ flight }) => !flight).map(({ late }) => late * 1000),
    ...(isByBand ? { isByBand } : {}),
    isOpen: found.isOpen,
  };
}
