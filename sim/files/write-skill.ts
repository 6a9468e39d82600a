/**
 * A SkillSpec as a skill file, in the units people type: the way back of parse-skill.ts. What a search, a draft or an edit
 * made of a skill goes into its file by this and nothing else.
 */
import type { EndSpec } from '../flight/flight.ts';
import { beforeOf, flightOf } from '../math/phases.ts';
import type { SmoothingCriterion } from '../schedule/smoothing.ts';
import type { LandingSpec } from '../skill/landing-spec.ts';
import type { AthleteSpec, NamedPose, SkillSpec } from '../skill/skill-spec.ts';
import type { HumanAthlete, SegmentOverride } from './athlete-schema.ts';
import { writeCatch } from './parse-catch.ts';
import type { FileEnd, FileLanding, FileSurface, FileSwing } from './phase-schema.ts';
import type { FileSchedule, FileSmoothing } from './schedule-schema.ts';
import { type AthleteRef, SKILL_FORMAT, SKILL_VERSION, type SkillFile } from './skill-schema.ts';
import { tidy, tidyDeg } from './tidy.ts';
import { inOrderOf, writeStart } from './write-start.ts';

/** What a file names and a spec holds resolved. */
interface FileNames {
  readonly athlete: AthleteRef;
  readonly base: string | undefined;
}

export function writeSkill(spec: SkillSpec, names: FileNames, note?: string): SkillFile {
  const { before, takeoff } = writeStart(spec.start);
  const { target } = spec;
  return {
    format: SKILL_FORMAT,
    version: SKILL_VERSION,
    title: spec.title,
    ...(note === undefined ? {} : { note }),
    athlete: names.athlete,
    ...(spec.gravity === 9.81 ? {} : { gravityMPerS2: tidy(spec.gravity) }),
    phases: [
      ...(before ? [before] : []),
      {
        kind: 'flight',
        ...(takeoff ? { takeoff } : {}),
        end: writeEnd(spec.end),
        schedule: writeSchedule(spec, names.base),
      },
      ...(spec.after ? [writeLanding(spec.after)] : []),
      ...(spec.catch ? [writeCatch(spec.catch)] : []),
      ...(spec.isEntry ? [{ kind: 'entry' as const }] : []),
    ],
    ...(Object.keys(spec.ownShapes).length > 0
      ? {
          shapes: Object.fromEntries(
            Object.entries(spec.ownShapes).map(([id, pose]) => [
              id,
              { title: titleOf(spec, id), word: id, angles: inDegrees(pose) },
            ]),
          ),
        }
      : {}),
    ...(target
      ? {
          target: {
            somersaults: target.somersaults,
            ...(target.somersaultWord ? { direction: target.somersaultWord } : {}),
            twists: target.twists,
            ...(target.twistWord ? { twistTo: target.twistWord } : {}),
            ...(target.landingAngle ? { landingAngleDeg: tidyDeg(target.landingAngle) } : {}),
          },
        }
      : {}),
  };
}

/** The file with what differs between two specs; all else stays as it is written. `before` is the file, parsed. */
export function updateSkill(file: SkillFile, before: SkillSpec, after: SkillSpec): SkillFile {
  const names = (spec: SkillSpec): FileNames => ({
    athlete: writeHuman(spec.athlete) ?? file.athlete,
    base: flightOf(file).schedule.base,
  });
  const was = ordered(file, writeSkill(before, names(before)));
  const is = ordered(file, writeSkill(after, names(after)));
  const out = merge(file, was, is);
  // a name of the shelf has no fields that could take one changed measure
  return 'ref' in file.athlete && !same(was.athlete, is.athlete) ? { ...out, athlete: is.athlete } : out;
}

/** The keys of a swing in the order in which the file has them. */
function ordered(file: SkillFile, written: SkillFile): SkillFile {
  const own = beforeOf(file);
  if (own?.kind !== 'swing') return written;
  const inOrder = (swing: FileSwing): FileSwing => {
    const { keys, last } = swing.moves;
    const moves = { ...swing.moves, keys: inOrderOf(own.moves.keys, keys) };
    return { ...swing, moves: last && own.moves.last ? { ...moves, last: inOrderOf(own.moves.last, last) } : moves };
  };
  return { ...written, phases: written.phases.map((phase) => (phase.kind === 'swing' ? inOrder(phase) : phase)) };
}

type Branch = Record<string, unknown>;
const isBranch = (x: unknown): x is Branch => typeof x === 'object' && x !== null && !Array.isArray(x);

function same(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((x, i) => same(x, b[i]));
  if (isBranch(a) && isBranch(b))
    return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((name) => same(a[name], b[name]));
  return a === b;
}

/** What is the same in `was` and `is` stays as `written` has it. */
function merge<T>(written: T, was: unknown, is: unknown): T {
  if (same(was, is)) return written;
  if (Array.isArray(written) && Array.isArray(was) && Array.isArray(is))
    return written.length === was.length && was.length === is.length
      ? (written.map((one, i) => merge(one, was[i], is[i])) as T)
      : (is as T);
  if (!isBranch(written) || !isBranch(was) || !isBranch(is)) return is as T;
  const out: Branch = { ...written };
  for (const name of new Set([...Object.keys(was), ...Object.keys(is)])) {
    if (same(was[name], is[name])) continue;
    if (is[name] === undefined) delete out[name];
    else out[name] = merge(out[name], was[name], is[name]);
  }
  return out as T;
}

function writeEnd(end: EndSpec): FileEnd {
  const surfaceOf = ({ kind, y, by }: NonNullable<EndSpec['surface']>): FileSurface => ({
    kind,
    heightM: tidy(y),
    ...(by ? { by } : {}),
  });
  if (end.kind === 'duration')
    return { durationS: tidy(end.duration), ...(end.surface ? { surface: surfaceOf(end.surface) } : {}) };
  return { surface: surfaceOf(end.surface) };
}

function writeSchedule(spec: SkillSpec, base: string | undefined): FileSchedule {
  const { blocks, keys, samples, contacts, smoothing } = spec;
  return {
    ...(base === undefined ? {} : { base }),
    ...(blocks.length > 0
      ? {
          blocks: blocks.map((b) => ({
            shape: b.shape,
            from: { anchor: b.from.anchor, s: tidy(b.from.s) },
            to: { anchor: b.to.anchor, s: tidy(b.to.s) },
            arms: b.arms,
            ...(Object.keys(b.adjust).length > 0 ? { adjustDeg: inDegrees(b.adjust) } : {}),
          })),
        }
      : {}),
    ...(keys.length > 0
      ? {
          keys: keys.map((k) => ({
            angle: k.angle,
            at: { anchor: k.at.anchor, s: tidy(k.at.s) },
            deg: tidyDeg(k.value),
            ...(k.kind === 'pass' ? { kind: k.kind } : {}),
            ...(k.next === undefined ? {} : { nextDeg: tidyDeg(k.next) }),
          })),
        }
      : {}),
    ...(samples.length > 0
      ? {
          samples: samples.map((s) => ({
            angle: s.angle,
            startS: tidy(s.start),
            rateHz: s.rate,
            deg: Array.from(s.values, tidyDeg),
            ...(s.smoothing ? { smoothing: writeSmoothing(s.smoothing) } : {}),
          })),
        }
      : {}),
    ...(contacts && contacts.length > 0 ? { contacts: contacts.map((c) => ({ ...c })) } : {}),
    ...(smoothing.kind === 'gcv' ? {} : { smoothing: writeSmoothing(smoothing) }),
  };
}

export function writeSmoothing(smoothing: SmoothingCriterion): FileSmoothing {
  switch (smoothing.kind) {
    case 'noise':
      return { criterion: 'noise', rmsDeg: tidyDeg(smoothing.rms) };
    case 'cutoff':
      return { criterion: 'cutoff', hz: tidy(smoothing.hz) };
    default:
      return { criterion: smoothing.kind };
  }
}

function writeLanding({ mat, action, knee, duration }: LandingSpec): FileLanding {
  return {
    kind: 'landing',
    mat:
      typeof mat === 'string'
        ? mat
        : {
            thicknessM: tidy(mat.thickness),
            stiffnessKNPerM: tidy(mat.stiffness / 1000),
            dampingSPerM: tidy(mat.damping),
            friction: tidy(mat.friction),
          },
    ...(action.stiffness === undefined ? {} : { legStiffness: tidy(action.stiffness) }),
    ...(action.effort === undefined ? {} : { effort: tidy(action.effort) }),
    ...(action.eccentric === undefined ? {} : { eccentricFactor: tidy(action.eccentric) }),
    ...(action.delay === undefined ? {} : { reflexDelayS: tidy(action.delay) }),
    ...(knee === undefined ? {} : { kneeDeg: tidyDeg(knee) }),
    ...(action.keys && action.keys.length > 0
      ? {
          keys: action.keys.flatMap(({ s, angles }) =>
            Object.entries(angles).map(([joint, angle]) => ({
              s: tidy(s),
              joint: joint as NonNullable<FileLanding['keys']>[number]['joint'],
              deg: tidyDeg(angle),
            })),
          ),
        }
      : {}),
    ...(duration === undefined ? {} : { durationS: tidy(duration) }),
  };
}

/** No search changes a tree: undefined, and the file keeps its own. */
function writeHuman(athlete: AthleteSpec): HumanAthlete | undefined {
  if (athlete.kind !== 'human') return undefined;
  const { name, sex, mass, stature, age, shoulderHalfWidth, hipHalfWidth, overrides } = athlete.human;
  const segments = Object.entries(overrides ?? {}).map(([segment, o]): [string, SegmentOverride] => [
    segment,
    {
      ...(o.mass === undefined ? {} : { massKg: o.mass }),
      ...(o.length === undefined ? {} : { lengthM: o.length }),
      ...(o.centreShare === undefined ? {} : { centreShare: o.centreShare }),
      ...(o.radiiShare === undefined ? {} : { radiiShare: [...o.radiiShare] }),
    },
  ]);
  return {
    kind: 'human',
    name,
    sex,
    massKg: mass,
    statureM: stature,
    ...(age === undefined ? {} : { ageYears: age }),
    ...(shoulderHalfWidth === undefined ? {} : { shoulderHalfWidthM: shoulderHalfWidth }),
    ...(hipHalfWidth === undefined ? {} : { hipHalfWidthM: hipHalfWidth }),
    ...(segments.length > 0 ? { segments: Object.fromEntries(segments) } : {}),
  };
}

const inDegrees = (pose: NamedPose): Record<string, number> =>
  Object.fromEntries(Object.entries(pose).map(([name, angle]) => [name, tidyDeg(angle)]));

const titleOf = ({ blocks }: SkillSpec, shape: string): string =>
  blocks.find((block) => block.shape === shape)?.title ?? shape;
