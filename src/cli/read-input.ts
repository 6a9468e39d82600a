/** Finds what a command was given: a skill or athlete that comes with Shapeflight, by its id, or a JSON file. */
import { realpathSync } from 'node:fs';
import path from 'node:path';
import { athletes, chains, shapes, skills } from '../../presets/index.ts';
import {
  type Athlete,
  athleteOf,
  type Body,
  buildChain,
  buildSkill,
  type Catalogue,
  checkSkillFile,
  digestOf,
  FieldError,
  flyChain,
  type Handover,
  type InputOrigin,
  inAthleteFile,
  isSkillLink,
  LARGEST_TEXT,
  LinkError,
  legFile,
  legSpec,
  legsOf,
  loadContact,
  makeBody,
  originOfSkill,
  parseAthlete,
  parseChain,
  parseJson,
  parseSkill,
  readAnySheet,
  readAthlete,
  readSkillLink,
  type ShapeData,
  type SheetFile,
  type Skill,
  type SkillFile,
  type SkillSpec,
  textOfBytes,
  updateChain,
  updateSkill,
} from '../../sim/index.ts';
import { nameOf } from './call.ts';
import { CommandError } from './command-error.ts';
import { readBytes } from './read-file.ts';

/** Of one flight and of several. */
const ready = { ...skills, ...chains };

interface ReadSkill {
  readonly spec: SkillSpec;
  readonly skill: Skill;
  /** as the file holds it */
  readonly file: SkillFile;
  /** written in, or the one that its reference leads to */
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly inputs: readonly string[];
  readonly origin: InputOrigin;
  /** a skill file of the same shelf, from its text; of a leg, from the text of its chain */
  parseBack(text: string): SkillSpec;
  /** the file with what a search made of `spec`: that of the skill, or of the chain that it is a leg of */
  update(after: SkillSpec): SkillFile;
}

/** A file and what its names lead to. */
export interface ReadDocument {
  readonly file: SkillFile;
  readonly shelf: Catalogue;
  readonly inputs: readonly string[];
  readonly origin: InputOrigin;
}

/** `given`: id of a preset, a path, or a link. */
export function readDocument(given: string): ReadDocument {
  if (isSkillLink(given))
    return about('the link', () => makeDocument(readSkillLink(given).file, 'the link', undefined));
  if (Object.hasOwn(ready, given)) return about(given, () => makeDocument(ready[given], given, undefined));
  return about(given, () => makeDocument(readJson(given, 'skill', Object.keys(ready)), given, given));
}

/** What a document is known by, against the ready skills. */
function originOf(given: string, file: SkillFile, shelf: Catalogue): InputOrigin {
  const known = Object.entries(ready).flatMap(([id, json]) => {
    if (json.title !== file.title) return [];
    const of = checkSkillFile(json);
    return [[id, { file: of, athlete: athleteOf(of, { athletes, shapes }) }] as const];
  });
  return originOfSkill(nameOf(given), file, athleteOf(file, shelf), Object.fromEntries(known));
}

/** The same, with "#2" at its end for the second flight of a chain. */
export async function readSkill(given: string): Promise<ReadSkill> {
  const [, name = given, typed] = /^(.*)#(\d+)$/.exec(given) ?? [];
  const read = readDocument(name);
  const count = legsOf(read.file).length;
  const leg = typed === undefined ? undefined : Number(typed) - 1;
  if (leg === undefined && count > 1)
    throw new CommandError(
      `${name}: a chain of ${count} flights; choose one, ${name}#1 to ${name}#${count} (fly takes it whole)`,
    );
  if (leg !== undefined && !(leg >= 0 && leg < count))
    throw new CommandError(`${given}: "#${typed}" is not possible; allowed: #1 to #${count}`);
  if (leg === undefined || count === 1) return about(name, () => makeSkill(read));
  const chain = about(name, () => buildChain(parseChain(read.file, read.shelf)));
  const { legs } = flyChain({ ...chain, legs: chain.legs.slice(0, leg + 1) }, await loadContact());
  if (legs.length <= leg) throw new CommandError(`${given}: the chain ends before it; fly ${name} says why`);
  return about(given, () => makeLeg(read, leg, legs[leg].handed));
}

interface ReadBody {
  readonly body: Body;
  readonly gravity: number;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly inputs: readonly string[];
  readonly origin: InputOrigin;
}

/** The body of an athlete or of a skill's athlete. */
export function readBody(given: string): ReadBody {
  if (Object.hasOwn(athletes, given)) return fromAthlete(athletes[given], given, []);
  if (Object.hasOwn(ready, given)) return fromDocument(readDocument(given));
  return about(given, () => {
    const json = readJson(given, 'skill or athlete', [...Object.keys(athletes), ...Object.keys(ready)]);
    const isSkill = typeof json === 'object' && json !== null && ('phases' in json || 'takeoff' in json);
    const saysSkill =
      typeof json === 'object' && json !== null && 'format' in json && json.format === 'shapeflight-skill';
    return isSkill || saysSkill ? fromDocument(makeDocument(json, given, given)) : fromAthlete(json, given, [given]);
  });
}

/** An athlete by id or from a file, and how a skill file refers to it: written in where it comes from a file. */
export function readAthleteRef(given: string): {
  readonly athlete: Athlete;
  readonly ref: SkillFile['athlete'];
  readonly inputs: readonly string[];
} {
  if (Object.hasOwn(athletes, given)) return { athlete: athletes[given], ref: { ref: given }, inputs: [] };
  const athlete = about(given, () => {
    const json = readJson(given, 'athlete', Object.keys(athletes));
    bodyOf(json);
    return parseAthlete(json);
  });
  return { athlete, ref: athlete, inputs: [given] };
}

/** A sheet by its id, from JSON, or from plain text. */
export function readSheetFile(
  given: string,
  known: Readonly<Record<string, SheetFile>>,
): { sheet: SheetFile; inputs: readonly string[]; isSkill?: true } {
  if (Object.hasOwn(known, given)) return { sheet: known[given], inputs: [] };
  return about(given, () => {
    const { sheet, isSkill } = readAnySheet(readText(given, 'sheet', Object.keys(known)), given);
    return { sheet, inputs: [given], ...(isSkill ? { isSkill } : {}) };
  });
}

function fromDocument({ file, shelf, inputs, origin }: ReadDocument): ReadBody {
  const { body, gravity } = buildChain(parseChain(file, shelf));
  return { body, gravity, shapes: { ...shapes, ...file.shapes }, inputs, origin };
}

const bodyOf = (json: unknown): Body => inAthleteFile(json, () => makeBody(readAthlete(json)));

const fromAthlete = (json: unknown, given: string, inputs: readonly string[]): ReadBody => ({
  body: bodyOf(json),
  origin: { name: nameOf(given), sha256: digestOf(json as object), ready: null },
  gravity: 9.81,
  shapes,
  inputs,
});

/** `file`: where it was read from, if it was. */
function makeDocument(json: unknown, given: string, file: string | undefined): ReadDocument {
  const checked = checkSkillFile(json);
  const inputs = file === undefined ? [] : [file];
  const known: Record<string, Athlete> = { ...athletes };
  if (file !== undefined && 'ref' in checked.athlete && !Object.hasOwn(known, checked.athlete.ref)) {
    const { ref } = checked.athlete;
    if (ref.endsWith('.json')) {
      const beside = besideSkill(file, ref);
      known[ref] = about(beside, () => parseAthlete(readJson(beside, 'athlete', [])));
      inputs.push(beside);
    }
  }
  const shelf = { athletes: known, shapes };
  return { file: checked, shelf, inputs, origin: originOf(given, checked, shelf) };
}

function makeSkill({ file, shelf, inputs, origin }: ReadDocument): ReadSkill {
  const spec = parseSkill(file, shelf);
  return {
    spec,
    skill: buildSkill(spec),
    file,
    athlete: athleteOf(file, shelf),
    shapes: { ...shapes, ...file.shapes },
    inputs,
    origin,
    parseBack: (text) => parseSkill(checkSkillFile(parseJson(text)), shelf),
    update: (after) => updateSkill(file, spec, after),
  };
}

/** A leg as a skill of its own, from what the leg before hands over; for searches with the legs before it. */
function makeLeg(read: ReadDocument, leg: number, handed: Handover | undefined): ReadSkill {
  const one = makeSkill({ ...read, file: legFile(read.file, leg, handed) });
  const { earlier } = legSpec(parseChain(read.file, read.shelf), leg);
  const spec = earlier ? { ...one.spec, earlier } : one.spec;
  return {
    ...one,
    spec,
    parseBack: (text) => legSpec(parseChain(parseJson(text), read.shelf), leg),
    update: (after) => updateChain(read.file, leg, spec, after),
  };
}

const BESIDE = 'the id of a ready athlete, or a .json file in the folder of the skill or below';

/** A skill names an athlete file in its own folder or below; it cannot reach elsewhere, by a link neither. */
function besideSkill(skillFile: string, ref: string): string {
  const parts = ref.split(/[\\/]/);
  const isOutside = path.isAbsolute(ref) || /^[A-Za-z]:/.test(ref) || parts.includes('..');
  if (isOutside || ref.includes('\0')) throw new FieldError('athlete.ref', ref, BESIDE);
  const folder = path.dirname(skillFile);
  const beside = path.join(folder, ...parts);
  const place = placeOf(beside);
  if (place === undefined) return beside;
  if (!place.startsWith(path.join(realpathSync(folder), path.sep)))
    throw new FieldError('athlete.ref', ref, `${BESIDE}; a link leads out of it`);
  return place;
}

/** What is not there, or a link in a ring, is said by who reads it. */
function placeOf(file: string): string | undefined {
  try {
    return realpathSync(file);
  } catch {
    return undefined;
  }
}

function readJson(file: string, what: string, ids: readonly string[]): unknown {
  return parseJson(readText(file, what, ids));
}

export function readText(file: string, what: string, ids: readonly string[]): string {
  try {
    return textOfBytes(readBytes(file, LARGEST_TEXT));
  } catch (error) {
    const isName = error instanceof CommandError && isMissing(error.cause) && !/[\\/.]/.test(file);
    if (!isName) throw error;
    throw new CommandError(`no ${what} that comes with Shapeflight, and no such file; there are: ${ids.join(', ')}`);
  }
}

const isMissing = (cause: unknown): boolean => cause instanceof Error && 'code' in cause && cause.code === 'ENOENT';

/** Puts the name of the file before what is wrong in it. */
export function about<T>(name: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof LinkError) throw new CommandError(error.message);
    if (error instanceof FieldError || error instanceof CommandError) {
      const message = error.message.replace(/^file: /, '');
      throw new CommandError(message.startsWith(`${name}: `) ? message : `${name}: ${message}`);
    }
    throw error;
  }
}
