/**
 * An estimate beside the simulation, and which assumption makes the difference. Assumptions are switched one at a time,
 * in either of two ways:
 * - a line the estimate rests on is itself set against a readout: that readout takes its place ("as simulated");
 * - the simulation is made to assume the same (shape held, no limb motion, constant speed), if it can.
 * The one whose switch brings the ratio nearest to 1 is the cause, if it closes a good part of the gap.
 */
import type { Assumption } from './assumption.ts';
import { isSimulated } from './assumption.ts';
import { type CheckedUnit, checkSame } from './check-units.ts';
import { sameDimension } from './dimension.ts';
import { wordCause } from './estimate-words.ts';
import type { Sheet } from './known-sheet.ts';
import { type PlainBody, type PlainBodyKind, plainBodyOf } from './plain-body.ts';
import { SheetFault } from './sheet-fault.ts';
import type { Compared, LinkValue, Quantity, Switch } from './sheet-result.ts';

/** Within this of 1 the two agree, whatever the ± says. */
const AGREES = 0.02;
/** Beyond this either of the two is zero but for rounding. */
const NO_RATIO = 1e9;
/** A cause closes at least this share of the gap, in the logarithm of the ratio. */
const CLOSES = 0.25;

const linkIf = (text: string, assumption: Assumption): string => `${text} if ${assumption}`;

export function compareRow(
  row: Omit<Quantity, 'compared'>,
  text: string,
  checked: CheckedUnit,
  sheet: Sheet,
): Compared {
  const link = readLink(text, sheet);
  if (!link || 'missing' in link)
    return { text, missing: link?.missing ?? 'no skill is open', switches: [], sentence: '' };
  checkSame({ dimension: link.dimension, unit: link.unit }, checked, `{${text}}`);
  const simulated = link.value;
  const ratio = row.value / simulated;
  if (!(ratio > 1 / NO_RATIO && ratio < NO_RATIO)) {
    return { text, simulated, switches: [], sentence: wordCause({ ratio: Number.NaN, within: false, switches: [] }) };
  }
  const ends =
    row.drawLow === undefined || row.drawHigh === undefined
      ? {}
      : { ratioLow: row.drawLow / simulated, ratioHigh: row.drawHigh / simulated };
  const switches = [...switchLines(row, simulated, sheet), ...switchSimulation(row, text, sheet)];
  const within =
    Math.abs(ratio - 1) < AGREES ||
    ('ratioLow' in ends && ends.ratioLow !== undefined && ends.ratioLow <= 1 && (ends.ratioHigh ?? 0) >= 1);
  const cause = within ? undefined : findCause(ratio, switches);
  const plain = within || cause !== undefined ? undefined : plainThatAgrees(row, simulated, sheet);
  const sentence = wordCause({
    ratio,
    within,
    switches,
    putIn: sheet.read.quantities.get(row.name)?.needs.length === 0 && row.assumptions.length === 0,
    ...(cause === undefined ? {} : { cause }),
    ...(plain ? { plain } : {}),
  });
  return { text, simulated, ratio, ...ends, switches, ...(cause === undefined ? {} : { cause }), sentence };
}

/** A moment that is itself that of a plain body: the size at which this body has the simulated one. */
function plainThatAgrees(row: Omit<Quantity, 'compared'>, simulated: number, sheet: Sheet): PlainBody | undefined {
  const kind = row.assumptions.map((a) => BODY_OF[a]).find((k) => k !== undefined);
  const mass = sheet.known.get('mass');
  if (!kind || !mass || !sameDimension(row.dimension, [1, 2, 0])) return undefined;
  return plainBodyOf(kind, mass.value, simulated);
}

const BODY_OF: Partial<Record<Assumption, PlainBodyKind>> = {
  'straight rod': 'rod',
  disc: 'disc',
  ball: 'ball',
  cylinder: 'cylinder',
};

function readLink(text: string, { links }: Sheet): LinkValue | undefined {
  return Object.hasOwn(links, text) ? links[text] : undefined;
}

/** Every line this one rests on, nearest first. */
function restsOn(name: string, sheet: Sheet): string[] {
  const found = new Set<string>();
  let ring = [name];
  while (ring.length > 0) {
    ring = ring.flatMap((n) => sheet.read.quantities.get(n)?.needs ?? []).filter((n) => !found.has(n) && n !== name);
    for (const n of ring) found.add(n);
  }
  return [...found];
}

function switchLines(row: Omit<Quantity, 'compared'>, simulated: number, sheet: Sheet): Switch[] {
  return restsOn(row.name, sheet).flatMap((name) => {
    const source = sheet.read.quantities.get(name)?.source;
    const link = source?.against === undefined ? undefined : readLink(source.against, sheet);
    const known = sheet.known.get(name);
    if (!source || !link || 'missing' in link || !known || !sameDimension(known.checked.dimension, link.dimension))
      return [];
    const estimate = attempt(() => sheet.recompute(row.name, new Map([[name, link.value]])));
    return keep({ assumptions: source.assumptions, name, estimate, simulated, ratio: estimate / simulated });
  });
}

function switchSimulation(row: Omit<Quantity, 'compared'>, text: string, sheet: Sheet): Switch[] {
  const all = [row.name, ...restsOn(row.name, sheet)].flatMap(
    (name) => sheet.read.quantities.get(name)?.source.assumptions ?? [],
  );
  return [...new Set(all)].filter(isSimulated).flatMap((assumption) => {
    const link = readLink(linkIf(text, assumption), sheet);
    if (!link || 'missing' in link) return [];
    return keep({
      assumptions: [assumption],
      estimate: row.value,
      simulated: link.value,
      ratio: row.value / link.value,
    });
  });
}

function attempt(work: () => number): number {
  try {
    return work();
  } catch (error) {
    if (error instanceof SheetFault) return Number.NaN;
    throw error;
  }
}

const keep = (s: Switch): Switch[] => (s.ratio > 0 && Number.isFinite(s.ratio) ? [s] : []);

function findCause(ratio: number, switches: readonly Switch[]): number | undefined {
  const gap = Math.abs(Math.log(ratio));
  let best: number | undefined;
  let least = gap * (1 - CLOSES);
  switches.forEach((s, i) => {
    const left = Math.abs(Math.log(s.ratio));
    if (left < least) {
      least = left;
      best = i;
    }
  });
  return best;
}
