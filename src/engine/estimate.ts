/**
 * Estimate sheets for the page: skill and formulas are computed in a worker that is ended when it takes too long. Loaded
 * with the tool; the worker alone loads the parser of formulas.
 */
import { sheets } from '../../presets/sheet-shelf.ts';
import {
  CAUTION,
  COMPARED,
  formatSheet,
  READOUTS,
  readAnySheet,
  type ShapeData,
  type SheetFile,
  type SheetPart,
  sheetOfPart,
} from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { SheetAnswer, SheetRequest } from '../jobs/kinds/sheet-data.ts';
import { type JobCall, JobCancelledError, JobTimeoutError, type Pool } from '../jobs/pool.ts';
import type { FlightResult } from './result.ts';

export type { SheetAnswer, SheetRow } from '../jobs/kinds/sheet-data.ts';
export type { SheetFile };

/** A sheet within its limits takes some 0.1 s; the first one loads the worker too. */
const LONGEST_MS = 8000;

interface HowShown {
  readonly also?: 'csv' | 'page';
  readonly measure?: 'metric' | 'imperial';
}

export interface Estimating {
  readonly sheets: readonly { readonly id: string; readonly sheet: SheetFile }[];
  /** names of readouts, for who writes a sheet */
  readonly readouts: readonly string[];
  /** a newer question takes the place of an older one, which is then never answered */
  compute(sheet: SheetFile, result: FlightResult, how?: HowShown): Promise<SheetAnswer>;
  /** from JSON or plain text; throws an Error that a person can read */
  read(text: string, name: string): SheetFile;
  write(sheet: SheetFile): string;
  /** the sheet kept with a skill */
  ofSkill(part: SheetPart): SheetFile;
}

export function makeEstimating(
  shapes: Readonly<Record<string, ShapeData>>,
  // the second one: a newer sheet need not wait for an older one that has a second to come back
  pool: Pool = makePagePool(2),
  longestMs = LONGEST_MS,
): Estimating {
  const ask = makeAsk(pool, longestMs);
  // a file asked for must not cancel the sheet on the page
  const askFile = makeAsk(pool, longestMs);
  return {
    sheets: Object.entries(sheets).map(([id, sheet]) => ({ id, sheet })),
    readouts: READOUTS.map((r) => r.name),
    compute: (sheet, result, { also, measure } = {}) =>
      (also ? askFile : ask)({
        lines: sheet.lines,
        file: result.file,
        athlete: result.athlete,
        shapes,
        key: result.key,
        ...(measure ? { measure } : {}),
        ...(also === 'csv' ? { csv: true } : {}),
        ...(also === 'page'
          ? {
              page: {
                title: sheet.title,
                ...(sheet.lesson === undefined ? {} : { lesson: sheet.lesson }),
                skill: result.skill.title,
                caution: `${CAUTION} ${COMPARED}`,
              },
            }
          : {}),
      }),
    read: (text, name) => readAnySheet(text, name).sheet,
    write: formatSheet,
    ofSkill: sheetOfPart,
  };
}

export class SheetTooSlowError extends Error {
  constructor(ms: number) {
    super(`the sheet took longer than ${ms / 1000} s and was stopped`);
    this.name = 'SheetTooSlowError';
  }
}

/** One question at a time: an older one is never answered, since the page shows the newest sheet only. */
function makeAsk(pool: Pool, limitMs: number): (request: SheetRequest) => Promise<SheetAnswer> {
  let last: JobCall<SheetAnswer> | undefined;
  return (request) => {
    last?.cancel();
    const call = pool.run('sheet', request, { limitMs });
    last = call;
    return new Promise((resolve, reject) => {
      call.done.then(resolve, (error: Error) => {
        if (error instanceof JobTimeoutError) reject(new SheetTooSlowError(limitMs));
        else if (!(error instanceof JobCancelledError)) reject(error);
      });
    });
  };
}
