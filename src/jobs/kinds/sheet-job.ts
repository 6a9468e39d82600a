/** A sheet computed beside the page: it is data from anywhere, and who asked can end the worker at any time. */
import { type Estimate, type LineResult, loadEstimate, readLinks } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { SheetAnswer, SheetRequest, SheetRow } from './sheet-data.ts';
import { readSkill } from './sheet-skill.ts';

/** A line as it is shown. */
export function rowOf(result: LineResult, by: Estimate, measure: SheetRequest['measure']): SheetRow {
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
