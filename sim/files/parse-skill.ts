/** From the JSON of a skill file to a SkillSpec in SI units; every fault is a FieldError with path, value and what is allowed. */
import type { EndSpec } from '../flight/flight.ts';
import { RAD } from '../math/angles.ts';
import { FieldError, unknownName } from '../math/field-error.ts';
import { own } from '../math/own.ts';
import { afterOf, flightOf, legsOf } from '../math/phases.ts';
import type { SmoothingCriterion } from '../schedule/smoothing.ts';
import type { NamedPose, SkillSpec } from '../skill/skill-spec.ts';
import type { Athlete } from './athlete-schema.ts';
import { inSi } from './athlete-si.ts';
import { checkSkillFile } from './check-skill.ts';
import { parseCatch } from './parse-catch.ts';
import { parseLanding } from './parse-landing.ts';
import { parseStart } from './parse-start.ts';
import { pathOf } from './phase-path.ts';
import type { FileSurface } from './phase-schema.ts';
import type { FileSmoothing, ShapeData } from './schedule-schema.ts';
import type { SkillFile } from './skill-schema.ts';

export interface Catalogue {
  readonly athletes: Readonly<Record<string, Athlete>>;
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

/** The angles of a shape in rad, by name. */
export const shapeInRadians = (shape: ShapeData): NamedPose => inRadians(shape.angles);

/** A skill file of one flight as a plain specification, SI and radians. `shelf`: athletes and shapes that it may name. Throws a FieldError with path, value and what is allowed. */
export function parseSkill(json: unknown, shelf: Catalogue): SkillSpec {
  const file = checkSkillFile(json);
  const flights = legsOf(file).length;
  if (flights > 1)
    throw new FieldError('phases', file.phases, `one flight: this is a chain of ${flights}, flown as one`);
  const { end, schedule, target = file.target } = flightOf(file);
  const path = `${pathOf(file, 'flight')}.schedule`;
  const landing = afterOf(file);
  const last = file.phases[file.phases.length - 1];
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
    start: parseStart(file, poseOf),
    end:
      'durationS' in end
        ? { kind: 'duration', duration: end.durationS, ...(end.surface ? { surface: inMetres(end.surface) } : {}) }
        : { kind: 'touchdown', surface: inMetres(end.surface) },
    base:
      schedule.base === undefined && !Object.hasOwn(shapes, 'straight')
        ? {}
        : poseOf(schedule.base ?? 'straight', `${path}.base`),
    ownShapes: Object.fromEntries(Object.entries(file.shapes ?? {}).map(([id, shape]) => [id, shapeInRadians(shape)])),
    blocks: (schedule.blocks ?? []).map((b, i) => ({
      shape: b.shape,
      title: own(shapes, b.shape)?.title,
      pose: poseOf(b.shape, `${path}.blocks[${i}].shape`),
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
      values: Float64Array.from(s.deg, (d) => d * RAD),
      ...(s.smoothing ? { smoothing: smoothingOf(s.smoothing) } : {}),
    })),
    ...(schedule.contacts ? { contacts: schedule.contacts } : {}),
    smoothing: smoothingOf(schedule.smoothing ?? { criterion: 'gcv' }),
    ...(landing ? { after: parseLanding(landing, pathOf(file, 'landing')) } : {}),
    ...(last.kind === 'catch' ? { catch: parseCatch(last, `phases[${file.phases.length - 1}]`) } : {}),
    ...(last.kind === 'entry' ? { isEntry: true } : {}),
    ...(target
      ? {
          target: {
            somersaults: target.somersaults,
            somersaultWord: target.direction ?? '',
            twists: target.twists,
            twistWord: target.twistTo ?? '',
            landingAngle: (target.landingAngleDeg ?? 0) * RAD,
          },
        }
      : {}),
  };
}

/** The athlete that is written in, or that a reference leads to. */
export function athleteOf(file: SkillFile, shelf: Catalogue): Athlete {
  if (!('ref' in file.athlete)) return file.athlete;
  const { ref } = file.athlete;
  if (!Object.hasOwn(shelf.athletes, ref))
    throw unknownName('athlete.ref', ref, Object.keys(shelf.athletes), 'an athlete that is known here');
  return shelf.athletes[ref];
}

const inRadians = (angles: Record<string, number>): NamedPose =>
  Object.fromEntries(Object.entries(angles).map(([k, d]) => [k, d * RAD]));
function smoothingOf(smoothing: FileSmoothing): SmoothingCriterion {
  switch (smoothing.criterion) {
    case 'noise':
      return { kind: 'noise', rms: smoothing.rmsDeg * RAD };
    case 'cutoff':
      return { kind: 'cutoff', hz: smoothing.hz };
    default:
      return { kind: smoothing.criterion };
  }
}
const inMetres = ({ kind, heightM, by }: FileSurface): NonNullable<EndSpec['surface']> => ({
  kind,
  y: heightM,
  ...(by ? { by } : {}),
});
