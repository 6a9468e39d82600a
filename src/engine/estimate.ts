/**
 * Estimate sheets for the page: skill and formulas are computed in a worker that is ended when it takes too long. Loaded
 * with the tool; the worker alone loads the parser of formulas.
 */
import { sheets } from '../../presets/sheet-shelf.ts';
import {
  CAUTION,
  formatSheet,
  parseJson,
  parseSheet,
  parseSheetText,
  READOUTS,
  type ShapeData,
  type SheetFile,
  type SheetPart,
  sheetOfPart,
} from '../../sim/index.ts';
import type { SheetAnswer, SheetReply, SheetRequest } from './estimate-messages.ts';
import type { FlightResult } from './result.ts';

export type { SheetAnswer, SheetRow } from './estimate-messages.ts';
export type { SheetFile };

/** A worker busy for longer than this with a sheet that is no longer wanted is ended for the next one. */
const PATIENT_MS = 1000;
/** A sheet within its limits takes some 0.1 s; the first one loads the worker too. */
const LONGEST_MS = 8000;

export interface Estimating {
  readonly sheets: readonly { readonly id: string; readonly sheet: SheetFile }[];
  /** names of readouts, for whoever writes a sheet */
  readonly readouts: readonly string[];
  /** a newer question takes the place of an older one, which is then never answered */
  compute(sheet: SheetFile, result: FlightResult, also?: 'csv' | 'page'): Promise<SheetAnswer>;
  /** from JSON or plain text; throws an Error that a person can read */
  read(text: string): SheetFile;
  write(sheet: SheetFile): string;
  /** the sheet kept with a skill */
  ofSkill(part: SheetPart): SheetFile;
}

/** The part of a Worker that is used. */
export type SheetWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

const startWorker = (): SheetWorker => new Worker(new URL('./estimate-worker.ts', import.meta.url), { type: 'module' });

export function makeEstimating(
  shapes: Readonly<Record<string, ShapeData>>,
  start: () => SheetWorker = startWorker,
  longestMs = LONGEST_MS,
): Estimating {
  const ask = makeAsk(start, longestMs);
  // a file asked for must not silence the sheet on the page
  const askFile = makeAsk(start, longestMs);
  return {
    sheets: Object.entries(sheets).map(([id, sheet]) => ({ id, sheet })),
    readouts: READOUTS.map((r) => r.name),
    compute: (sheet, result, also) =>
      (also ? askFile : ask)({
        lines: sheet.lines,
        file: result.file,
        athlete: result.athlete,
        shapes,
        key: result.key,
        ...(also === 'csv' ? { csv: true } : {}),
        ...(also === 'page'
          ? {
              page: {
                title: sheet.title,
                ...(sheet.lesson === undefined ? {} : { lesson: sheet.lesson }),
                skill: result.skill.title,
                caution: CAUTION,
              },
            }
          : {}),
      }),
    read: (text) => (/^\uFEFF?\s*\{/.test(text) ? parseSheet(parseJson(text)) : parseSheetText(text)),
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

/** One worker, one question at a time; a worker that is late is ended, and the next question starts another. */
function makeAsk(
  start: () => SheetWorker,
  longestMs: number,
): (request: Omit<SheetRequest, 'id'>) => Promise<SheetAnswer> {
  let worker: SheetWorker | undefined;
  let last = 0;
  let waiting: { resolve: (answer: SheetAnswer) => void; reject: (error: Error) => void } | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let busySince: number | undefined;
  const settle = (): typeof waiting => {
    clearTimeout(timer);
    const one = waiting;
    waiting = undefined;
    return one;
  };
  const end = (): void => {
    worker?.terminate();
    worker = undefined;
    busySince = undefined;
  };
  const open = (): SheetWorker => {
    const made = start();
    made.addEventListener('message', ((event: MessageEvent<SheetReply>) => {
      const { data } = event;
      if (data.id !== last) return;
      busySince = undefined;
      const one = settle();
      if (data.kind === 'done') one?.resolve(data.answer);
      else one?.reject(new Error(data.reason));
    }) as EventListener);
    made.addEventListener('error', ((event: ErrorEvent) => {
      end();
      settle()?.reject(new Error(event.message || 'the worker did not start'));
    }) as EventListener);
    return made;
  };
  return (request) =>
    new Promise((resolve, reject) => {
      // whoever asked before is never answered: the page shows the newest sheet only
      settle();
      if (busySince !== undefined && Date.now() - busySince > PATIENT_MS) end();
      busySince ??= Date.now();
      last += 1;
      worker ??= open();
      waiting = { resolve, reject };
      timer = setTimeout(() => {
        end();
        settle()?.reject(new SheetTooSlowError(longestMs));
      }, longestMs);
      worker.postMessage({ ...request, id: last } satisfies SheetRequest);
    });
}
