/**
 * How far a series of bounces moves with a small error at its start: the chain flown again with it. The legs push as they did; but who comes to the bed leaning by d more than in the
 * series leaves it leaning by as much more, and pushes with the feet c sin d farther to that side of the mass centre, c its mean height, which turns the body on. Where flights are not
 * shown any more (MOST_BOUNCES), this is what is known of the next.
 */
import type { Vec3 } from '../body/body.ts';
import { RAD } from '../math/angles.ts';
import { calcFlightEnd } from '../measure/flight-end.ts';
import type { ChainLeg, SkillChain } from './chain.ts';
import { type BounceEnd, calcBedSensitivity } from './contact-bounces.ts';
import type { WholeContact } from './contact-room.ts';
import { type FlownLeg, flyChain } from './fly-chain.ts';
import type { Skill } from './skill.ts';

/** A last move 10 ms late, a take-off that leans 1 deg more back: less than the usual errors of a national athlete (12 ms and 2.3 deg at four instants of a giant, from a secondary copy). */
const CHAIN_ERRORS = ['late', 'lean'] as const;
export type ChainError = (typeof CHAIN_ERRORS)[number];
const LATE = 0.01;
const LEAN = RAD;

export type ChainSensitivity = ReturnType<typeof calcBedSensitivity<ChainError>>;

/** Of each error in the first flight; undefined where fewer than two flights end on a bed. */
export function calcChainSensitivity(chain: SkillChain, contact: WholeContact): ChainSensitivity | undefined {
  const first = chain.legs.findIndex((leg) => !isOnBed(leg));
  const onBed = first < 0 ? chain.legs : chain.legs.slice(0, first);
  if (onBed.length < 2) return undefined;
  const bounces: SkillChain = { ...chain, legs: onBed };
  const mostBounces = Number.POSITIVE_INFINITY;
  const series = flown(bounces, contact, mostBounces);
  if (series.length < 2) return undefined;
  const adjust = (skill: Skill, before: readonly FlownLeg[]): Skill => {
    const k = before.length;
    return k > 0 && k < series.length ? pushedAs(series[k], skill, series[k - 1], before[k - 1]) : skill;
  };
  return calcBedSensitivity(CHAIN_ERRORS, (error) =>
    (error ? flown(changed(bounces, error), contact, mostBounces, adjust) : series).map(endOf),
  );
}

/** As far as it flies: of a series that ends early, and of one of which a flight cannot be flown. */
function flown(
  chain: SkillChain,
  contact: WholeContact,
  mostBounces: number,
  adjust?: (skill: Skill, before: readonly FlownLeg[]) => Skill,
): readonly FlownLeg[] {
  for (let count = chain.legs.length; count > 0; count--)
    try {
      const legs = chain.legs.slice(0, count);
      return flyChain({ ...chain, legs }, contact, {}, { mostBounces, ...(adjust ? { adjust } : {}) }).legs;
    } catch (error) {
      if (!(error instanceof Error)) throw error;
    }
  return [];
}

/** Leaves the bed with the push of the series, by what is changed of how it is come to. */
function pushedAs({ whole }: FlownLeg, skill: Skill, was: FlownLeg, is: FlownLeg): Skill {
  const { takeoff } = whole.skill;
  const [from, to] = [arrivalOf(was), arrivalOf(is)];
  const lean = to.somersault - from.somersault;
  const turned = (whole.contact?.height ?? 0) * Math.sin(lean) * (whole.contact?.impulse.J_W[1] ?? 0);
  const added = (a: Vec3, k: 'v' | 'h'): Vec3 => [0, 1, 2].map((i) => a[i] + to[k][i] - from[k][i]) as unknown as Vec3;
  const [hx, hy, hz] = added(whole.flight.h_Scm_W, 'h');
  const { start } = skill;
  const approach = start.kind === 'swing' ? undefined : start.contact;
  return {
    ...skill,
    start: {
      kind: 'stated',
      takeoff: {
        ...takeoff,
        somersault: takeoff.somersault + lean,
        v_WScm_W: added(whole.flight.v_WScm_W0, 'v'),
        momentum: { kind: 'vector', h_Scm_W: [hx, hy, hz + turned] },
      },
      ...(approach ? { contact: approach } : {}),
    },
  };
}

function arrivalOf({ whole: { flight } }: FlownLeg): { somersault: number; v: Vec3; h: Vec3 } {
  const v = new Float64Array(3);
  flight.massCentreInto(flight.duration, new Float64Array(3), v);
  return { somersault: calcFlightEnd(flight).somersault, v: [v[0], v[1], v[2]], h: flight.h_Scm_W };
}

const isOnBed = ({ skill }: ChainLeg): boolean => skill.end.surface?.kind === 'trampoline';

/** The place is that under the mass centre. */
function endOf({ whole: { flight }, offset_W }: FlownLeg): BounceEnd {
  const end = calcFlightEnd(flight);
  const p = new Float64Array(3);
  flight.massCentreInto(flight.duration, p, new Float64Array(3));
  return { x: offset_W[0] + p[0], z: offset_W[2] + p[2], somersault: end.somersault, tilt: end.tilt, twist: end.twist };
}

function changed(chain: SkillChain, error: ChainError): SkillChain {
  const [first, ...rest] = chain.legs;
  return {
    ...chain,
    legs: [{ ...first, skill: error === 'late' ? later(first.skill) : leaning(first.skill, LEAN) }, ...rest],
  };
}

/** The last move of the body 10 ms later. */
function later(skill: Skill): Skill {
  const { blocks } = skill.schedule;
  const last = blocks.length - 1;
  const shift = (t: Skill['schedule']['blocks'][number]['from']) => ({ ...t, s: t.s + LATE });
  return {
    ...skill,
    schedule: {
      ...skill.schedule,
      blocks: blocks.map((b, i) =>
        i === last ? { ...b, from: shift(b.from), to: shift(b.to) } : i === last - 1 ? { ...b, to: shift(b.to) } : b,
      ),
    },
  };
}

function leaning(skill: Skill, by: number): Skill {
  const { start } = skill;
  if (start.kind === 'swing') return skill;
  if (start.kind === 'contact') return { ...skill, start: { ...start, somersault: start.somersault + by } };
  return { ...skill, start: { ...start, takeoff: { ...start.takeoff, somersault: start.takeoff.somersault + by } } };
}
