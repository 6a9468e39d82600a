/** Sheets are computed here, away from the page: a sheet is data from anywhere, and the page can end this at any time. */
import { type Estimate, type LineResult, loadEstimate, type SheetResult } from '../../sim/index.ts';
import type { SheetReply, SheetRequest, SheetRow } from './estimate-messages.ts';

const tell = (reply: SheetReply): void => postMessage(reply);

function rowOf(result: LineResult, by: Estimate): SheetRow {
  if (result.kind === 'drawing') return { result, size: by.formatFigures(result.body.size, 3) };
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
    ...by.figuresOf(result),
    ...bounds,
    ...(factor !== undefined && factor > 1.005 ? { factor: factor.toFixed(2) } : {}),
    ...(compared?.simulated === undefined ? {} : { simulated: by.figuresIn(compared.simulated, result) }),
    ...(compared?.ratio === undefined ? {} : { ratio: by.formatRatio(compared.ratio) }),
  };
}

async function answer({ id, lines, links, csv, page }: SheetRequest): Promise<void> {
  const by = await loadEstimate();
  const result: SheetResult = by.computeSheet(lines, links);
  tell({
    id,
    kind: 'done',
    answer: {
      rows: result.lines.map((line) => rowOf(line, by)),
      ...(csv ? { csv: by.formatSheetCsv(lines, result) } : {}),
      ...(page ? { page: by.formatSheetPage(page, lines, result) } : {}),
    },
  });
}

addEventListener('message', ({ data }: MessageEvent<SheetRequest>) => {
  answer(data).catch((error: unknown) => {
    tell({ id: data.id, kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
  });
});
