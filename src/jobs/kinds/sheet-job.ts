/** A sheet computed beside the page: it is data from anywhere, and who asked can end the worker at any time. */
import {
  buildSkill,
  calcSkillReadings,
  type Estimate,
  flyWhole,
  type LineResult,
  launch,
  loadContact,
  loadEstimate,
  parseSkill,
  partsOfWhole,
  poseOf,
  readLinks,
  type SkillResult,
  shapeInRadians,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { SheetAnswer, SheetRequest, SheetRow } from './sheet-data.ts';

function rowOf(result: LineResult, by: Estimate, measure: SheetRequest['measure']): SheetRow {
  if (result.kind === 'drawing') return { result, size: by.sizeIn(result.body.size, measure) };
  if (result.kind !== 'quantity') return { result };
  const { low, high, compared } = result;
  const factor = by.spreadFactor(result);
  const bounds =
    low === undefined || high === undefined
      ? {}
      : { least: by.figuresIn(low, result), greatest: by.figuresIn(high, result) };
  return {
    result,
    formula: by.setFormula(result.name, result.expression),
    ...(result.numbers === undefined ? {} : { numbers: result.numbers }),
    ...by.figuresOf(result),
    ...bounds,
    ...(factor !== undefined && factor > 1.005 ? { factor: factor.toFixed(2) } : {}),
    ...(compared?.simulated === undefined ? {} : { simulated: by.figuresIn(compared.simulated, result) }),
    ...(compared?.ratio === undefined ? {} : { ratio: by.formatRatio(compared.ratio) }),
  };
}

type Asked = Pick<SheetRequest, 'file' | 'athlete' | 'shapes' | 'key'>;
let read: { key: string; result: Promise<SkillResult> } | undefined;

/** The flight and what else readouts are taken from; of the flight that was asked for last they are kept. */
function readSkill(asked: Asked): Promise<SkillResult> {
  if (read?.key !== asked.key) read = { key: asked.key, result: flyAll(asked) };
  return read.result;
}

async function flyAll({ file, athlete, shapes }: Asked): Promise<SkillResult> {
  const skill = buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes }));
  const poses = Object.entries(shapes).map(([id, shape]) => [
    id,
    [...poseOf(skill.body, shapeInRadians(shape), id, true)],
  ]);
  const byShape = Object.fromEntries(poses);
  const { start, after } = skill;
  if (start.kind === 'stated' && !start.contact && !after) return calcSkillReadings(launch(skill), byShape);
  const whole = flyWhole(skill, await loadForJob(loadContact));
  return { ...calcSkillReadings(whole.skill, byShape, whole.flight), ...partsOfWhole(whole) };
}

async function compute({ lines, csv, page, measure, ...asked }: SheetRequest): Promise<SheetAnswer> {
  const by = await loadForJob(loadEstimate);
  // a sheet without a readout needs no flight
  const reads = lines.some((line) => line.includes('{') || /^\s*draw\s/.test(line));
  const result = by.computeSheet(lines, readLinks(lines, reads ? await readSkill(asked) : undefined), 1, measure);
  return {
    rows: result.lines.map((line) => rowOf(line, by, measure)),
    ...(csv ? { csv: by.formatSheetCsv(lines, result) } : {}),
    ...(page ? { page: by.formatSheetPage(page, lines, result) } : {}),
  };
}

export const sheetJob: JobKind<SheetRequest, undefined, never, SheetAnswer> = {
  open: (request) =>
    // biome-ignore lint/correctness/useYield: a sheet has no steps between
    async function* () {
      return await compute(request);
    },
};
