/** From the JSON of a skill file to a SkillSpec in SI units; every fault is a FieldError with path, value and range. */
import { RAD } from '../math/angles.ts';
import { FieldError, unknownName } from '../math/field-error.ts';
import type { AthleteSpec, NamedPose, SkillSpec } from '../skill/skill-spec.ts';
import { inSi } from './athlete-si.ts';
import { check } from './check-schema.ts';
import { findJsonFault } from './json-fault.ts';
import { migrate } from './migrate.ts';
import { parseStart } from './parse-start.ts';
import { parseArrival } from './parse-whole.ts';
import { type Athlete, type FileSurface, type ShapeData, SKILL_FORMAT, type SkillFile } from './skill-file.ts';
import { ATHLETE_FORMAT, ATHLETE_VERSION, athleteFileSchema, athleteSchema, skillSchema } from './skill-schema.ts';
import { checkTame } from './tame-json.ts';

export interface Shelf {
  readonly athletes: Readonly<Record<string, Athlete>>;
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

/** Text to JSON; a syntax fault names line and column. */
export function parseJson(text: string): unknown {
  const plain = text.replace(/^\uFEFF/, '');
  try {
    return JSON.parse(plain);
  } catch {
    const { line, column, expected } = findJsonFault(plain);
    throw new FieldError('file', `text that is not JSON from line ${line}, column ${column} on`, `${expected} there`);
  }
}

/** Checks the form; returns the document as the file holds it (after migration). */
export function checkSkillFile(json: unknown): SkillFile {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new FieldError('file', json, 'a JSON object');
  checkTame(json);
  const format = (json as Record<string, unknown>).format;
  if (format !== SKILL_FORMAT) throw new FieldError('format', format, `"${SKILL_FORMAT}"`);
  const file = check(skillSchema, migrate(json as Record<string, unknown>)) as SkillFile;
  const { massCentreHeightM, lowestPointHeightM } = file.takeoff;
  if ((massCentreHeightM === undefined) === (lowestPointHeightM === undefined))
    throw new FieldError(
      'takeoff',
      massCentreHeightM === undefined ? 'no height' : 'two heights',
      'exactly one of massCentreHeightM and lowestPointHeightM',
    );
  return file;
}

/** An athlete file, or a bare athlete; as the file holds it. */
export function parseAthlete(json: unknown): Athlete {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new FieldError('file', json, 'a JSON object');
  checkTame(json);
  const { format, version } = json as Record<string, unknown>;
  if (format === undefined) return check(athleteSchema, json) as Athlete;
  if (format !== ATHLETE_FORMAT) throw new FieldError('format', format, `"${ATHLETE_FORMAT}"`);
  if (version !== ATHLETE_VERSION) throw new FieldError('version', version, String(ATHLETE_VERSION));
  return check(athleteFileSchema, json).athlete as Athlete;
}

/** The same in SI, ready for makeBody. */
export const readAthlete = (json: unknown): AthleteSpec => inSi(parseAthlete(json));

/** The angles of a shape in rad, by name. */
export const shapeInRadians = (shape: ShapeData): NamedPose => inRadians(shape.angles);

export function parseSkill(json: unknown, shelf: Shelf): SkillSpec {
  const file = checkSkillFile(json);
  const { schedule } = file;
  const shapes = { ...shelf.shapes, ...file.shapes };
  const poseOf = (id: string, field: string): NamedPose => {
    if (!Object.hasOwn(shapes, id))
      throw unknownName(field, id, Object.keys(shapes), 'a shape of the catalogue or of this file');
    return inRadians(shapes[id].angles);
  };
  return {
    title: file.title,
    athlete: inSi(athleteOf(file, shelf)),
    gravity: file.gravityMPerS2 ?? 9.81,
    start: parseStart(file),
    end:
      'durationS' in file.end
        ? {
            kind: 'duration',
            duration: file.end.durationS,
            ...(file.end.surface ? { surface: inMetres(file.end.surface) } : {}),
          }
        : { kind: 'touchdown', surface: inMetres(file.end.surface) },
    base:
      schedule.base === undefined && !Object.hasOwn(shapes, 'straight')
        ? {}
        : poseOf(schedule.base ?? 'straight', 'schedule.base'),
    ownShapes: Object.fromEntries(Object.entries(file.shapes ?? {}).map(([id, shape]) => [id, shapeInRadians(shape)])),
    blocks: (schedule.blocks ?? []).map((b, i) => ({
      shape: b.shape,
      pose: poseOf(b.shape, `schedule.blocks[${i}].shape`),
      adjust: inRadians(b.adjustDeg ?? {}),
      from: b.from,
      to: b.to,
      arms: b.arms ?? 'direct',
    })),
    keys: (schedule.keys ?? []).map((k) => ({
      angle: k.angle,
      at: k.at,
      value: k.deg * RAD,
      kind: k.kind ?? 'stop',
      ...(k.nextDeg === undefined ? {} : { next: k.nextDeg * RAD }),
    })),
    samples: (schedule.samples ?? []).map((s) => ({
      angle: s.angle,
      start: s.startS,
      rate: s.rateHz,
      values: s.deg.map((d) => d * RAD),
    })),
    ...(schedule.contacts ? { contacts: schedule.contacts } : {}),
    smoothing:
      schedule.smoothing?.criterion === 'noise'
        ? { kind: 'noise', rms: schedule.smoothing.rmsDeg * RAD }
        : { kind: 'gcv' },
    ...(file.arrival ? { after: parseArrival(file.arrival) } : {}),
    ...(file.target
      ? {
          target: {
            somersaults: file.target.somersaults,
            somersaultWord: file.target.direction ?? '',
            twists: file.target.twists,
            twistWord: file.target.twistTo ?? '',
            landingAngle: (file.target.landingAngleDeg ?? 0) * RAD,
          },
        }
      : {}),
  };
}

function athleteOf(file: SkillFile, shelf: Shelf): Athlete {
  if (!('ref' in file.athlete)) return file.athlete;
  const { ref } = file.athlete;
  if (!Object.hasOwn(shelf.athletes, ref))
    throw unknownName('athlete.ref', ref, Object.keys(shelf.athletes), 'an athlete that is known here');
  return shelf.athletes[ref];
}

const inRadians = (angles: Record<string, number>): NamedPose =>
  Object.fromEntries(Object.entries(angles).map(([k, d]) => [k, d * RAD]));
const inMetres = (s: FileSurface): { kind: FileSurface['kind']; y: number } => ({ kind: s.kind, y: s.heightM });

/** A skill file as stable, pretty JSON. */
export function formatSkill(file: SkillFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}
