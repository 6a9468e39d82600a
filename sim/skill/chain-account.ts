/**
 * Energy and angular momentum along a chain: what each phase began with, what it gave or took, and what it left. Energy is that of the athlete, kinetic and height over the
 * chain's floor, J; momentum is about the mass centre, in the frame of the chain. What each phase gave is summed over its time by another way (joint work in the air and on the rail, force
 * times speed in a contact); `misses` is what the two differ by, as a share of the scale of the phase.
 */
import type { Vec3 } from '../body/body.ts';
import { calcFrames } from '../measure/calc-frames.ts';
import { makeJointWork } from '../measure/joint-work.ts';
import type { FlownChain, FlownLeg } from './fly-chain.ts';

export interface ChainAccountRow {
  readonly phase: 'swing' | 'contact' | 'flight' | 'catch';
  readonly leg: number;
  /** chain time, s */
  readonly from: number;
  readonly to: number;
  readonly energy: { readonly before: number; readonly after: number };
  readonly momentum_W: { readonly before: Vec3; readonly after: Vec3 };
  /** of energy, and of momentum where it is summed another way */
  readonly misses: { readonly energy?: number; readonly momentum?: number };
}

/** Energy (J) and angular momentum about the mass centre (kg m^2/s) before and after each phase of a flown chain. */
export function calcChainAccount({ legs }: FlownChain): ChainAccountRow[] {
  return legs.flatMap((leg, k) => [...beginning(leg, k, legs[k - 1]), flightRow(leg, k)]);
}

const turn = ([x, y, z]: Vec3, facing: 1 | -1): Vec3 => [facing * x, y, facing * z];

/** J, kinetic and height over Y = 0 at the ends of a flight. */
function energies({ whole: { flight } }: FlownLeg): {
  readonly first: number;
  readonly last: number;
  readonly work: number;
} {
  const { eTotal } = calcFrames(flight, [0, flight.duration]);
  const base = flight.body.mass * flight.gravity * flight.surfaceY;
  return { first: eTotal[0] + base, last: eTotal[1] + base, work: makeJointWork(flight)(flight.duration) };
}

function flightRow(leg: FlownLeg, k: number): ChainAccountRow {
  const { first, last, work } = energies(leg);
  const h = turn(leg.whole.flight.h_Scm_W, leg.facing);
  const scale = Math.max(Math.abs(first), Math.abs(last), 1e-9);
  return {
    phase: 'flight',
    leg: k,
    from: leg.from,
    to: leg.to,
    energy: { before: first, after: last },
    momentum_W: { before: h, after: h },
    misses: { energy: Math.abs(last - first - work) / scale },
  };
}

function beginning(leg: FlownLeg, k: number, before: FlownLeg | undefined): ChainAccountRow[] {
  const { course, whole } = leg;
  const after = energies(leg).first;
  const h: Vec3 = turn(whole.flight.h_Scm_W, leg.facing);
  const rows: ChainAccountRow[] = [];
  if (course) {
    const { before: e0, after: e1, misses, gave } = course.facts.account;
    const brought = after - (e1.moving + e1.turning + e1.height) + (e0.moving + e0.turning);
    rows.push({
      phase: 'contact',
      leg: k,
      from: before ? before.to : leg.from + whole.from,
      to: leg.from,
      energy: { before: before ? energies(before).last : brought, after },
      momentum_W: { before: [h[0] - gave.h_Scm_W[0], h[1] - gave.h_Scm_W[1], h[2] - gave.h_Scm_W[2]], after: h },
      misses,
    });
  }
  const { swing } = whole;
  if (!swing) return rows;
  const { kinetic, potential, energy, work, loss, hCentre } = swing.columns;
  const last = swing.shown - 1;
  const scale = Math.max(...[0, last].map((i) => Math.abs(energy[i])), 1e-9);
  const begins = kinetic[0] + potential[0];
  const caught = before?.whole.catch?.caught;
  if (before && caught)
    rows.push({
      phase: 'catch',
      leg: k - 1,
      from: before.to,
      to: before.to,
      energy: { before: energies(before).last, after: begins },
      momentum_W: { before: turn(before.whole.flight.h_Scm_W, before.facing), after: [0, 0, leg.facing * hCentre[0]] },
      misses: {},
    });
  rows.push({
    phase: 'swing',
    leg: k,
    from: leg.from + whole.from,
    to: leg.from,
    energy: { before: begins, after },
    momentum_W: { before: [0, 0, leg.facing * hCentre[0]], after: h },
    misses: { energy: Math.abs(energy[last] - energy[0] - work[last] + loss[last]) / scale },
  });
  return rows;
}
