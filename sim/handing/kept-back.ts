/**
 * What of a skill is handed on. Skill and stature always; name, age and mass only where that is asked. What is kept back is made up
 * for by what does not depend on whose it is, so that the flight is the same: decision 0041.
 */
import { SEGMENT_KINDS } from '../body/deleva.ts';
import { ADULT_AGE } from '../body/mass-shares.ts';
import type { Athlete, HumanAthlete, SegmentOverride } from '../files/athlete-schema.ts';
import { checkSkillFile } from '../files/check-skill.ts';
import type { SkillFile } from '../files/skill-schema.ts';

/** What goes along. A club and a remark go with the name. */
export interface Along {
  readonly name: boolean;
  readonly age: boolean;
  readonly mass: boolean;
  /** estimate sheets kept with the skill: their lines may hold any of these */
  readonly sheets: boolean;
  /** what was measured in a clip and is kept with the skill: instants, scale, posed frames. The clip itself is put in by who hands on, or stays */
  readonly film: boolean;
}
/** What stayed; an age that changes nothing of the body is not listed. */
export type Kept = Exclude<keyof Along, 'sheets' | 'film'>;

/** What is another for the one who opens it. */
type KeptChange =
  /** a child's body was flown */
  | 'body'
  /** it was measured, and is the same; what it is held against is an adult's */
  | 'strength'
  /** a bar gives way by the mass on it */
  | 'swing'
  /** a mat gives way by the mass on it */
  | 'landing'
  /** forces are those of another mass */
  | 'forces';

export interface Handed {
  readonly file: SkillFile;
  readonly kept: readonly Kept[];
  readonly changes: readonly KeptChange[];
}

/** kg for each square metre of the stature, the same for all (our choice; no norm): a mass by stature says nothing of whose it was. */
const USUAL_BUILD = 20;
const LONGEST_NOTE = 2000;

/** kg, to a tenth */
export const usualMass = (statureM: number): number => Math.round(USUAL_BUILD * statureM ** 2 * 10) / 10;
const namelessHuman = (statureM: number): string => `Athlete of ${statureM} m`;
const NAMELESS_TREE = 'Body without a name';
const NAMELESS_CLIP = 'Clip';
export const nameless = (athlete: { kind: 'human'; statureM: number } | { kind: 'tree' }): string =>
  athlete.kind === 'human' ? namelessHuman(athlete.statureM) : NAMELESS_TREE;

/** `athlete`: whom the file names. Throws a FieldError where the file, so changed, is none. */
export function keepBack(file: SkillFile, athlete: Athlete, along: Along): Handed {
  const kept = listKept(athlete, along);
  const { $schema: _, recordings, note: own, athlete: _2, worksheets: sheets, ...rest } = file;
  const isScaled = athlete.kind === 'human' && !along.mass;
  const scale = isScaled ? usualMass(athlete.statureM) / athlete.massKg : 1;
  const changes = listChanges(kept, { phases: file.phases, athlete });
  const note = noteOf(along.name ? own : undefined, changes);
  const films = along.film ? filmsOf(recordings ?? [], along) : [];
  const handed = {
    ...rest,
    ...(note === undefined ? {} : { note }),
    ...(along.sheets && sheets ? { worksheets: sheets } : {}),
    ...(films.length > 0 ? { recordings: films } : {}),
    athlete: athlete.kind === 'human' ? humanOf(athlete, along, scale) : treeOf(athlete, along),
    phases: scale === 1 ? file.phases : file.phases.map((phase) => scalePhase(phase, scale)),
  };
  return { file: checkSkillFile(handed), kept, changes };
}

type Recording = NonNullable<SkillFile['recordings']>[number];

/** Measured in clips by this program. */
export const isClipRecording = ({ kind, data }: Recording): boolean =>
  kind === 'film' && typeof data === 'object' && data !== null && 'form' in data && data.form === 'clip';

/** A file's name, a title and a remark may hold a name: they go with it. A clip that is in it stays. */
function filmsOf(recordings: readonly Recording[], along: Along): Recording[] {
  return recordings.filter(isClipRecording).map(({ title, file, note, data, ...rest }) => {
    const { clip: _, ...measured } = data as { readonly clip?: unknown };
    return {
      ...rest,
      title: along.name ? title : NAMELESS_CLIP,
      ...(along.name && file !== undefined ? { file } : {}),
      ...(along.name && note !== undefined ? { note } : {}),
      data: measured,
    };
  });
}

function listKept(athlete: Athlete, along: Along): Kept[] {
  const human = athlete.kind === 'human';
  return [
    ...(along.name ? [] : (['name'] as const)),
    ...(human && !along.age && (athlete.ageYears ?? ADULT_AGE) < ADULT_AGE ? (['age'] as const) : []),
    ...(human && !along.mass ? (['mass'] as const) : []),
  ];
}

/** Every segment's mass is measured: below 18, too, the age then decides nothing of the body. */
function isMeasured(athlete: object): boolean {
  const segments = 'segments' in athlete ? (athlete.segments as HumanAthlete['segments']) : undefined;
  const has = (name: string): boolean => segments?.[name]?.massKg !== undefined;
  const isWhole = (name: string): boolean => has(name) || (has(`${name}L`) && has(`${name}R`));
  return SEGMENT_KINDS.every((kind) => isWhole(kind) || (kind === 'lowerTrunk' && has('pelvis')));
}

export function listChanges(
  kept: readonly Kept[],
  { phases, athlete }: Pick<SkillFile, 'phases' | 'athlete'>,
): KeptChange[] {
  const isMass = kept.includes('mass');
  const has = (...kinds: string[]): boolean => phases.some(({ kind }) => kinds.includes(kind));
  return [
    ...(kept.includes('age') ? [isMeasured(athlete) ? ('strength' as const) : ('body' as const)] : []),
    ...(isMass && has('swing', 'catch') ? (['swing'] as const) : []),
    ...(isMass && has('landing') ? (['landing'] as const) : []),
    ...(isMass ? (['forces'] as const) : []),
  ];
}

/** What the one who opens it has to know, as a remark of the file. */
export function noteOf(own: string | undefined, changes: readonly KeptChange[]): string | undefined {
  const said = [
    ...(changes.includes('forces')
      ? [
          `Handed on without the mass: flown at ${USUAL_BUILD} kg for each square metre of height, the same for all; read forces in body weights.`,
        ]
      : []),
    ...(changes.includes('swing') ? ["A bar gives by the mass on it: the sender's swing was another."] : []),
    ...(changes.includes('landing')
      ? ["A mat gives by the mass on it: forces and how the landing ends are near the sender's, not the same."]
      : []),
    ...(changes.includes('body')
      ? [
          "Handed on without the age: flown with an adult's body, and compared with an adult's strength; the sender's was another.",
        ]
      : []),
    ...(changes.includes('strength') ? ["Handed on without the age: compared with an adult's strength."] : []),
  ].join(' ');
  if (!said) return own;
  return own ? `${own.slice(0, LONGEST_NOTE - said.length - 1)} ${said}` : said;
}

function humanOf(athlete: HumanAthlete, along: Along, scale: number): HumanAthlete {
  const { name, club, ageYears, massKg, segments, ...body } = athlete;
  return {
    ...body,
    name: along.name ? name : namelessHuman(athlete.statureM),
    ...(along.name && club !== undefined ? { club } : {}),
    massKg: along.mass ? massKg : usualMass(athlete.statureM),
    ...(along.age && ageYears !== undefined ? { ageYears } : {}),
    ...(segments ? { segments: scale === 1 ? segments : scaleSegments(segments, scale) } : {}),
  };
}

function treeOf(tree: Extract<Athlete, { kind: 'tree' }>, along: Along): Athlete {
  if (along.name) return tree;
  const { club: _, ...body } = tree;
  return { ...body, name: NAMELESS_TREE };
}

const scaleSegments = (
  segments: Readonly<Record<string, SegmentOverride>>,
  scale: number,
): Record<string, SegmentOverride> =>
  Object.fromEntries(
    Object.entries(segments).map(([name, one]) => [
      name,
      one.massKg === undefined ? one : { ...one, massKg: one.massKg * scale },
    ]),
  );

type Phase = SkillFile['phases'][number];

/** Angular momentum goes with the mass; all else of a phase is in speeds, shapes and body weights, or is of the apparatus. */
function scalePhase(phase: Phase, scale: number): Phase {
  if (phase.kind === 'contact') {
    const { momentumKgM2PerS: h, given } = phase;
    return {
      ...phase,
      ...(h ? { momentumKgM2PerS: times(h, scale) } : {}),
      ...(given?.freeTurnKgM2PerS === undefined
        ? {}
        : { given: { ...given, freeTurnKgM2PerS: given.freeTurnKgM2PerS * scale } }),
    };
  }
  const momentum = phase.kind === 'flight' ? phase.takeoff?.momentum : undefined;
  if (phase.kind !== 'flight' || !momentum || !('vectorKgM2PerS' in momentum)) return phase;
  const vectorKgM2PerS = times(momentum.vectorKgM2PerS, scale);
  return { ...phase, takeoff: { ...phase.takeoff, momentum: { vectorKgM2PerS } } };
}

const times = ([x, y, z]: [number, number, number], scale: number): [number, number, number] => [
  x * scale,
  y * scale,
  z * scale,
];
