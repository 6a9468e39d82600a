/** From the JSON of a skill file to the legs of its chain; a skill of one flight is a chain of one leg. Faults name the field of the whole file. */
import { FieldError } from '../math/field-error.ts';
import { type LegPlace, legsOf } from '../math/phases.ts';
import type { CatchAsk, CaughtSwing } from '../skill/chain.ts';
import type { ChainLegSpec, ChainSpec } from '../skill/chain-spec.ts';
import { CATCH_DEFAULTS } from './catch-defaults.ts';
import { checkSkillFile } from './check-skill.ts';
import { legFile } from './leg-file.ts';
import { type Catalogue, parseSkill } from './parse-skill.ts';
import { parseSwing } from './parse-start.ts';
import type { FileCatch, FileFlight, FileSwing } from './phase-schema.ts';
import type { SkillFile } from './skill-schema.ts';

export function parseChain(json: unknown, shelf: Catalogue): ChainSpec {
  const file = checkSkillFile(json);
  return { title: file.title, legs: legsOf(file).map((place, leg) => parseLeg(file, place, leg, shelf)) };
}

function parseLeg(file: SkillFile, place: LegPlace, leg: number, shelf: Catalogue): ChainLegSpec {
  const spec = inFile(place, () => parseSkill(legFile(file, leg), shelf));
  const after = place.after === undefined ? undefined : file.phases[place.after];
  const next = after && after.kind !== 'landing' && after.kind !== 'flight' ? after : undefined;
  return {
    title: (file.phases[place.flight] as FileFlight).title ?? file.title,
    spec,
    ...(next && next.kind !== 'swing' ? { next: next.kind } : {}),
    ...(next?.kind === 'catch' ? { catch: parseCatch(next, `phases[${place.after}]`) } : {}),
  };
}

function parseCatch(c: FileCatch, path: string): CatchAsk {
  const swing = c.swing && parseCaughtSwing(c, c.swing, path);
  return {
    rail: c.rail,
    along: c.alongM ?? 0,
    hands: c.hands ?? 'both',
    gap: c.gapM ?? CATCH_DEFAULTS.gapM,
    closing: c.closingMPerS ?? CATCH_DEFAULTS.closingMPerS,
    armsStiffness: (c.armsKNPerM ?? CATCH_DEFAULTS.armsKNPerM) * 1000,
    ...(swing ? { swing } : {}),
  };
}

/** As a swing of its own, but for how it starts. */
function parseCaughtSwing({ rail }: FileCatch, swing: NonNullable<FileCatch['swing']>, path: string): CaughtSwing {
  const whole: FileSwing = { release: { atS: swing.durationS }, ...swing, kind: 'swing', rail, start: { castDeg: 0 } };
  const { rail: _, start: __, release, ...rest } = parseSwing(whole, `${path}.swing`);
  return { ...rest, ...(swing.release ? { release } : {}) };
}

/** A fault of a leg, with the place it has in the whole file. */
function inFile<T>({ before, flight, after }: LegPlace, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    const places = [...(before === undefined ? [] : [before]), flight, ...(after === undefined ? [] : [after])];
    const field = error.field.replace(/^phases\[(\d+)\]/, (_, i: string) => `phases[${places[Number(i)] ?? i}]`);
    throw new FieldError(field, error.value, error.allowed, error.detail);
  }
}
