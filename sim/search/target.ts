/**
 * What is asked of a skill: counts, landing attitude, time in the air or height, each with a tolerance; where to land
 * and in which shape; whether joint limits must hold. From fields, from a drafted code, or from the skill's own target.
 */

import type { SurfaceKind } from '../flight/flight.ts';
import { RAD, REV, turnedTo } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS, outside } from '../math/out-units.ts';
import { bandOf, heldWithin } from '../measure/landing-band.ts';
import type { SkillTarget } from '../measure/target.ts';
import { buildSkill } from '../skill/build-skill.ts';
import type { CatchAsk } from '../skill/catch-ask.ts';
import type { DraftSpec } from '../skill/draft-spec.ts';
import type { LaunchedSkill } from '../skill/launch.ts';
import { launchChained } from '../skill/launch-chained.ts';
import type { NamedPose, SkillSpec } from '../skill/skill-spec.ts';
import { SAME_COUNT } from './margin-window.ts';
import { findResult } from './result.ts';

/** A result that is to have a value, give or take a tolerance; in the unit of the result. */
export interface Wish {
  readonly result: string;
  readonly value: number;
  readonly tolerance: number;
  /** all values within the tolerance are as good */
  readonly isLoose?: boolean;
}

/** Joint limits that must hold; all of them are always reported. */
export interface LimitsAsked {
  readonly range: boolean;
  readonly speed: boolean;
  readonly torque: boolean;
}
export const NO_LIMITS: LimitsAsked = { range: false, speed: false, torque: false };

export interface TargetFields {
  /** revolutions */
  readonly somersaults: number;
  readonly direction?: SkillTarget['somersaultWord'];
  readonly twists: number;
  readonly twistTo?: SkillTarget['twistWord'];
  /** somersault angle of F at the end, rad; left out: what the somersaults make of an upright or inverted take-off */
  readonly landingAngle?: number;
  /** tilt at the end, rad (0) */
  readonly tilt?: number;
  /** twists done when somersault 1, 2, ... is complete */
  readonly twistsAfter?: readonly number[];
  /** s; m of the mass centre above Y = 0 */
  readonly airTime?: number;
  readonly height?: number;
  readonly surface?: { readonly kind: SurfaceKind; readonly y: number };
  /** 'held' (left out): where it comes down on its feet on a floor or mat, the landing has to be held as its verdict has it, and a rail caught; 'any': its angle alone */
  readonly ending?: 'held' | 'any';
  /** shape held at the end, in place of the skill's last one */
  readonly endShape?: { readonly id: string; readonly pose: NamedPose };
  readonly within?: Partial<Tolerances>;
}

export interface Tolerances {
  /** rad */
  readonly landing: number;
  readonly tilt: number;
  /** rev */
  readonly twists: number;
  readonly twistsAfter: number;
  readonly airTime: number;
  readonly height: number;
}
/** How near a search comes to what is asked (judgement; a code rounds to half twists). Whether a landing is held is its verdict's to say. */
export const USUAL_TOLERANCES: Tolerances = {
  landing: 5 * RAD,
  tilt: 3 * RAD,
  twists: 5 / 360,
  twistsAfter: 0.2,
  airTime: 0.01,
  height: 0.02,
};

/** A skill with its target stated in it, and the wishes that make the target. */
export interface Aim {
  readonly spec: SkillSpec;
  readonly wishes: readonly Wish[];
  /** what an answer's verdict has to say of its ending */
  readonly ending?: 'held';
}

/** `launched`: of a skill that a swing or contact launches, where it is at hand. */
export function aimAt(spec: SkillSpec, fields: TargetFields, launched?: LaunchedSkill): Aim {
  const within = { ...USUAL_TOLERANCES, ...fields.within };
  for (const [name, value] of Object.entries(within))
    if (!(value > 0)) {
      const { scale } = OUT_UNITS[name === 'landing' || name === 'tilt' ? 'rad' : 'count'];
      throw new FieldError(`target.within.${name}`, outside(value, scale), 'above 0');
    }
  if (!(fields.somersaults >= 0 && fields.somersaults <= 20))
    throw new FieldError('target.somersaults', fields.somersaults, '0 to 20');
  if (!(fields.twists >= 0 && fields.twists <= 20)) throw new FieldError('target.twists', fields.twists, '0 to 20');
  const target: SkillTarget = {
    somersaults: fields.somersaults,
    somersaultWord: fields.direction ?? spec.target?.somersaultWord ?? '',
    twists: fields.twists,
    twistWord: fields.twistTo ?? spec.target?.twistWord ?? '',
    landingAngle: fields.landingAngle ?? landingOf(spec, fields, launched),
  };
  const wanted = withEnd({ ...spec, target }, fields);
  const held = fields.ending === 'any' ? [] : heldWishes(wanted);
  const wishes: Wish[] = [
    // a landing is held at an angle of its own: one that is asked for beside it is asked for by its tolerance
    held.length > 0 && fields.within?.landing === undefined
      ? { result: 'short', value: 0, tolerance: SAME_COUNT, isLoose: true }
      : { result: 'short', value: 0, tolerance: within.landing },
    { result: 'twists', value: fields.twists, tolerance: within.twists },
    { result: 'tilt', value: fields.tilt ?? 0, tolerance: within.tilt },
    ...(fields.twistsAfter ?? []).map((value, i) => ({
      result: `twistsAfter.${i + 1}`,
      value,
      tolerance: within.twistsAfter,
    })),
    ...(fields.airTime === undefined ? [] : [{ result: 'airTime', value: fields.airTime, tolerance: within.airTime }]),
    ...(fields.height === undefined ? [] : [{ result: 'height', value: fields.height, tolerance: within.height }]),
    ...held,
  ];
  for (const wish of wishes) findResult(wish.result);
  return { spec: wanted, wishes, ...(held.length > 0 ? { ending: 'held' } : {}) };
}

/** The skill's own target. */
export function ownAim(spec: SkillSpec, within?: Partial<Tolerances>, ending?: TargetFields['ending']): Aim {
  if (!spec.target && spec.catch && ending !== 'any') return { spec, wishes: catchWishes(spec.catch), ending: 'held' };
  if (!spec.target) throw new FieldError('target', undefined, 'the somersaults and twists that are wanted');
  const { somersaults, somersaultWord, twists, twistWord, landingAngle } = spec.target;
  return aimAt(spec, {
    somersaults,
    twists,
    landingAngle,
    ...(somersaultWord ? { direction: somersaultWord } : {}),
    ...(twistWord ? { twistTo: twistWord } : {}),
    ...(within ? { within } : {}),
    ...(ending ? { ending } : {}),
  });
}

/** Whatever is caught is as good: near enough, and not too fast along the arms. */
const catchWishes = ({ gap, closing }: CatchAsk): Wish[] => [
  { result: 'catch.gap', value: 0, tolerance: gap, isLoose: true },
  { result: 'catch.closing', value: 0, tolerance: closing, isLoose: true },
];

function heldWishes(spec: SkillSpec): Wish[] {
  if (spec.catch) return catchWishes(spec.catch);
  const reach = heldWish(spec);
  return reach ? [reach] : [];
}

/** Reach in the middle of what is held; undefined where no landing on the feet is wanted, or the surface is none that the landing model knows. */
function heldWish({ end, target, gravity, athlete }: SkillSpec): Wish | undefined {
  const band = bandOf(end.surface?.kind);
  const hasFeet =
    athlete.kind === 'human' || athlete.tree.segments.some((s) => s.contacts.some((c) => c.part === 'feet'));
  if (
    !band ||
    !hasFeet ||
    !(gravity > 0) ||
    end.kind !== 'touchdown' ||
    !target ||
    Math.abs(turnedTo(target.landingAngle, 0)) > SAME_COUNT
  )
    return undefined;
  const [low, high] = heldWithin(band);
  return { result: 'reach', value: (low + high) / 2, tolerance: (high - low) / 2 };
}

/** What a code of the trade asks; where a trampoline code says where the twists go, so does the target. */
export function fieldsOfDraft(draft: DraftSpec): TargetFields {
  const twists = draft.halfTwists.reduce((a, b) => a + b, 0) / 2;
  const sign = draft.direction === 'backward' ? 1 : -1;
  let sum = 0;
  const after = draft.halfTwists.map((n) => {
    sum += n / 2;
    return sum;
  });
  const start = draft.takeoff === 'hands' ? 0.5 : 0;
  const places = draft.surface === 'trampoline' ? Math.floor(draft.somersaults) : 0;
  return {
    somersaults: draft.somersaults,
    direction: draft.somersaults > 0 ? draft.direction : '',
    twists,
    landingAngle: withinHalf(start + sign * (draft.somersaults % 1)) * REV,
    // what a code says of the last complete somersault is said by the twists in all
    ...(places > 1 ? { twistsAfter: after.slice(0, places - 1) } : {}),
    surface: { kind: draft.surface, y: draft.surface === 'water' ? 0 : 1.15 },
  };
}

/**
 * Where it lands if nothing is said: as the skill's own target does, turned on by what is asked beyond its somersaults; without one
 * upright or inverted at take-off, whichever is nearer, and the part of a turn. From a swing whole somersaults end upright.
 */
function landingOf(spec: SkillSpec, fields: TargetFields, launched?: LaunchedSkill): number {
  const signOf = (word?: string): number => (word === 'forward' ? -1 : 1);
  const own = spec.target;
  const turned = signOf(fields.direction ?? own?.somersaultWord) * (fields.somersaults % 1);
  if (own) {
    const start = own.landingAngle / REV - signOf(own.somersaultWord) * (own.somersaults % 1);
    return withinHalf(start + turned) * REV;
  }
  const { takeoff, launch: from } = launched ?? launchChained(buildSkill(spec));
  const isInverted = from.kind !== 'swing' && Math.abs(withinHalf(takeoff.somersault / REV)) > 0.25;
  return withinHalf((isInverted ? 0.5 : 0) + turned) * REV;
}

function withEnd(spec: SkillSpec, { surface, endShape }: TargetFields): SkillSpec {
  let out = spec;
  if (surface) out = { ...out, end: { ...out.end, surface } };
  if (endShape) {
    const last = out.blocks[out.blocks.length - 1];
    if (!last)
      throw new FieldError('target.endShape', endShape.id, 'a skill with blocks, so that the last one can change');
    if (last.shape !== endShape.id)
      out = {
        ...out,
        blocks: [...out.blocks.slice(0, -1), { ...last, shape: endShape.id, pose: endShape.pose, adjust: {} }],
      };
  }
  return out;
}

/** The same angle in revolutions, from -0.5 (left out) to 0.5. */
const withinHalf = (x: number): number => x - Math.ceil(x - 0.5);
