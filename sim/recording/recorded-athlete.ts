/** The athlete with the lengths that a recording shows: what was measured replaces what the proportions give; the stature follows from the sum. */
import type { Body } from '../body/body.ts';
import { makeHuman } from '../body/human.ts';
import type { HumanAthlete } from '../files/athlete-schema.ts';
import { inSi } from '../files/athlete-si.ts';
import { FieldError } from '../math/field-error.ts';
import type { SkeletonLengths } from './skeleton-rest.ts';

interface RecordedAthlete {
  readonly athlete: HumanAthlete;
  readonly body: Body;
  readonly note?: string;
}

/** Lengths nearer than this to the athlete's own are the athlete's, m. */
const SAME = 2e-4;
const TRUNK = ['pelvis', 'middleTrunk', 'upperTrunk'] as const;
const TRUNK_KIND = { pelvis: 'lowerTrunk', middleTrunk: 'middleTrunk', upperTrunk: 'upperTrunk' } as const;

/** A file's human as a Body. */
export function bodyOfAthlete(athlete: HumanAthlete): Body {
  const spec = inSi(athlete);
  if (spec.kind !== 'human') throw new FieldError('athlete', spec.kind, 'a human');
  return makeHuman(spec.human);
}

export function lengthsOfBody(body: Body): SkeletonLengths {
  const joint = (name: string): readonly number[] => body.segments.find((s) => s.name === name)?.p_PoBo_P ?? [0, 0, 0];
  const mean = (name: string): number => (Math.abs(joint(`${name}L`)[1]) + Math.abs(joint(`${name}R`)[1])) / 2;
  return {
    upperArm: mean('forearm'),
    forearm: mean('hand'),
    thigh: mean('shank'),
    shank: mean('foot'),
    hipHalfWidth: Math.abs(joint('thighL')[2]),
    shoulderHalfWidth: Math.abs(joint('upperArmL')[2]),
    trunk: joint('middleTrunk')[1] + joint('upperTrunk')[1] + joint('upperArmL')[1],
  };
}

/** The head's length is what closes the sum; one side's own lengths give way to what was recorded of both. */
function withoutHeadLength(segments: NonNullable<HumanAthlete['segments']>): NonNullable<HumanAthlete['segments']> {
  return Object.fromEntries(
    Object.entries(segments).map(([name, { lengthM, ...rest }]) => [
      name,
      lengthM === undefined || CLOSED.test(name) ? rest : { ...rest, lengthM },
    ]),
  );
}
const CLOSED = /^(head|(upperArm|forearm|thigh|shank)[LR])$/;

/** `lengths` in m; NaN: not recorded. A body that cannot be is not made: the athlete's own then, and said. */
export function recordedAthlete(athlete: HumanAthlete, lengths: SkeletonLengths): RecordedAthlete {
  const own = bodyOfAthlete(athlete);
  const were = lengthsOfBody(own);
  const names = Object.keys(were) as (keyof SkeletonLengths)[];
  if (names.every((k) => !(Math.abs(lengths[k] - were[k]) > SAME))) return { athlete, body: own };
  const is = (k: keyof SkeletonLengths): number => (Number.isFinite(lengths[k]) ? lengths[k] : were[k]);
  const long = (name: string): number => own.segments.find((s) => s.name === name)?.values?.length ?? 0;
  const k = is('trunk') / were.trunk;
  const ankle = (own.standingRootHeight ?? 0) - were.thigh - were.shank;
  const trunk = TRUNK.reduce((sum, name) => sum + k * long(name), 0);
  // head and ankle grow with the stature, which is the sum of all
  const stature =
    (is('thigh') + is('shank') + trunk) / (1 - (ankle + long('head')) / (own.stature ?? athlete.statureM));
  const made: HumanAthlete = {
    ...athlete,
    statureM: stature,
    shoulderHalfWidthM: is('shoulderHalfWidth'),
    hipHalfWidthM: is('hipHalfWidth'),
    segments: {
      ...withoutHeadLength(athlete.segments ?? {}),
      ...Object.fromEntries(
        (['upperArm', 'forearm', 'thigh', 'shank'] as const).map((name) => [
          name,
          { ...athlete.segments?.[name], lengthM: is(name) },
        ]),
      ),
      ...Object.fromEntries(
        TRUNK.map((name) => [TRUNK_KIND[name], { ...athlete.segments?.[TRUNK_KIND[name]], lengthM: k * long(name) }]),
      ),
    },
  };
  try {
    return { athlete: made, body: bodyOfAthlete(made) };
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    return {
      athlete,
      body: own,
      note: `The lengths of this recording make no body (${error.message}): those of ${athlete.name} are used.`,
    };
  }
}
