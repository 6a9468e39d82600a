/**
 * An estimate beside the simulation, and which assumption makes the difference. Assumptions are switched one at a time,
 * in either of two ways:
 * - a line the estimate rests on is itself set against a readout: that readout takes its place ("as simulated");
 * - the simulation is made to assume the same (shape held, no limb motion, constant speed), if it can.
 * The one whose switch brings the ratio nearest to 1 is the cause, if it closes a good part of the gap.
 */
import { type Assumption, isAssumption, isSimulated, type SimulatedAssumption } from './assumption.ts';
import { type CheckedUnit, checkSame, checkUnits } from './check-units.ts';
import { sameDimension } from './dimension.ts';
import { wordCause, wordPeak } from './estimate-words.ts';
import { evaluateNumber } from './evaluate.ts';
import { childrenOf, type Expression } from './expression.ts';
import { linkOf, need, type Sheet } from './known-sheet.ts';
import { type PlainBody, type PlainBodyKind, plainBodyOf } from './plain-body.ts';
import type { ReadQuantity } from './read-sheet.ts';
import { SheetFault } from './sheet-fault.ts';
import type { Compared, Links, Quantity, Switch } from './sheet-result.ts';
import { STANDARD_GRAVITY } from './units.ts';

/** Within this of 1 the two agree, whatever the ± says. */
const AGREES = 0.02;
/** Beyond this either of the two is zero but for rounding. */
const NO_RATIO = 1e9;
/** A cause closes at least this share of the gap, in the logarithm of the ratio. */
const CLOSES = 0.25;

const linkIf = (text: string, assumption: Assumption): string => `${text} if ${assumption}`;

export function compareRow(
  row: Omit<Quantity, 'compared'>,
  quantity: ReadQuantity,
  checked: CheckedUnit,
  sheet: Sheet,
): Compared {
  const against = quantity.against as Expression;
  const text = quantity.source.against?.text ?? '';
  const missing = missingIn(against, sheet);
  if (missing !== undefined) return { text, missing, switches: [], sentence: '' };
  const found = checkUnits(against, {
    name: (name) => need(name, sheet).checked,
    link: (link) => linkOf(link, sheet.links).checked,
  });
  checkSame(found, checked, `vs ${against.kind === 'link' ? `{${text}}` : text}`);
  const simulated = simulate(against, sheet) * inWeightsOfAthlete(row, sheet);
  const remark = peakRemark(row, against, simulated, sheet);
  const compared = compareTo(simulated, { row, text, against, sheet });
  return { ...compared, ...(remark === undefined ? {} : { remark }) };
}

interface Given {
  readonly row: Omit<Quantity, 'compared'>;
  readonly text: string;
  readonly against: Expression;
  readonly sheet: Sheet;
}

function compareTo(simulated: number, { row, text, against, sheet }: Given): Compared {
  const ratio = row.value / simulated;
  if (!(ratio > 1 / NO_RATIO && ratio < NO_RATIO)) {
    return { text, simulated, switches: [], sentence: wordCause({ ratio: Number.NaN, within: false, switches: [] }) };
  }
  const ends =
    row.drawLow === undefined || row.drawHigh === undefined
      ? {}
      : { ratioLow: row.drawLow / simulated, ratioHigh: row.drawHigh / simulated };
  const switches = [...switchLines(row, simulated, sheet), ...switchSimulation(row, against, sheet)];
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
  const kind = row.assumptions.map((a) => (isAssumption(a) ? BODY_OF[a] : undefined)).find((k) => k !== undefined);
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

function linksIn(e: Expression): string[] {
  return e.kind === 'link' ? [e.text] : childrenOf(e).flatMap(linksIn);
}

const find = (text: string, links: Links): Links[string] | undefined =>
  Object.hasOwn(links, text) ? links[text] : undefined;

/** Why there is nothing to set it against. */
function missingIn(e: Expression, { links }: Sheet): string | undefined {
  for (const text of linksIn(e)) {
    const link = find(text, links);
    if (!link) return 'no skill is open';
    if ('missing' in link) return link.missing;
  }
  return undefined;
}

/** The simulated side, with readouts as they are or as another link has them. */
function simulate(e: Expression, sheet: Sheet, linkAs: (text: string) => string = (text) => text): number {
  return evaluateNumber(e, {
    name: (name) => need(name, sheet).value,
    link: (text) => linkOf(linkAs(text), sheet.links).value,
  });
}

/**
 * A result in body weights is set against a simulated one in body weights, each of its own athlete: the factor that takes a simulated force
 * from the weight of the athlete who flew to that of the sheet.
 */
function inWeightsOfAthlete(row: Omit<Quantity, 'compared'>, sheet: Sheet): number {
  if (row.unit.name !== 'bw') return 1;
  const flown = ['mass', 'gravity'].map((text) => find(text, sheet.links));
  const [mass, gravity] = flown.map((link) => (link && 'value' in link ? link.value : Number.NaN));
  const weight = mass * (Number.isFinite(gravity) ? gravity : STANDARD_GRAVITY);
  return weight > 0 ? row.unit.factor / weight : 1;
}

/** The same with the simulation taking something for granted; undefined where it cannot. */
function simulateIf(e: Expression, assumption: SimulatedAssumption, sheet: Sheet): number | undefined {
  let changed = 0;
  const value = attempt(() =>
    simulate(e, sheet, (text) => {
      const other = linkIf(text, assumption);
      const link = find(other, sheet.links);
      if (!link || 'missing' in link) return text;
      changed++;
      return other;
    }),
  );
  return changed > 0 && Number.isFinite(value) ? value : undefined;
}

/** A mean set against a peak is never the peak: the simulated mean over the simulated peak is what it would be. */
function peakRemark(
  row: Omit<Quantity, 'compared'>,
  against: Expression,
  simulated: number,
  sheet: Sheet,
): string | undefined {
  if (!linksIn(against).some((text) => text.startsWith('greatest '))) return undefined;
  const other = simulateIf(against, 'mean', sheet);
  const mean = other === undefined ? undefined : other * inWeightsOfAthlete(row, sheet);
  if (mean === undefined || !(simulated > 0) || !(mean > 0)) return undefined;
  const isMean = [row.name, ...restsOn(row.name, sheet)].some((name) => {
    const said = sheet.read.quantities.get(name)?.source.assumptions ?? [];
    return /mean|average/i.test(name) || said.includes('mean') || said.includes('constant speed');
  });
  return wordPeak(mean / simulated, isMean);
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
    const quantity = sheet.read.quantities.get(name);
    const known = sheet.known.get(name);
    const { against } = quantity ?? {};
    if (!quantity || !against || !known || missingIn(against, sheet) !== undefined) return [];
    const there = attempt(() => simulate(against, sheet));
    const dimension = attemptUnit(against, sheet);
    if (!Number.isFinite(there) || !dimension || !sameDimension(known.checked.dimension, dimension.dimension))
      return [];
    const estimate = sheet.recompute(row.name, new Map([[name, there]]));
    const { assumptions } = quantity.source;
    return keep({ assumptions, name, estimate, simulated, ratio: estimate / simulated });
  });
}

function attemptUnit(e: Expression, sheet: Sheet): CheckedUnit | undefined {
  try {
    return checkUnits(e, {
      name: (name) => need(name, sheet).checked,
      link: (text) => linkOf(text, sheet.links).checked,
    });
  } catch (error) {
    if (error instanceof SheetFault) return undefined;
    throw error;
  }
}

function switchSimulation(row: Omit<Quantity, 'compared'>, against: Expression, sheet: Sheet): Switch[] {
  const all = [row.name, ...restsOn(row.name, sheet)].flatMap(
    (name) => sheet.read.quantities.get(name)?.source.assumptions ?? [],
  );
  return [...new Set(all)].filter(isSimulated).flatMap((assumption) => {
    const other = simulateIf(against, assumption, sheet);
    if (other === undefined) return [];
    const simulated = other * inWeightsOfAthlete(row, sheet);
    return keep({ assumptions: [assumption], estimate: row.value, simulated, ratio: row.value / simulated });
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
