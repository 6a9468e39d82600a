/** What a pool and its workers say to each other. Everything is plain data that a thread can be sent. */
import type { JobName } from './job-table.ts';

export type ToWorker =
  | {
      readonly kind: 'piece';
      readonly call: number;
      readonly index: number;
      readonly piece: unknown;
      /** with the first piece of a call that a worker gets */
      readonly opens?: { readonly job: JobName; readonly subject: unknown };
    }
  /** nothing of the call is wanted any more; pieces that have not been answered come back as 'dropped' */
  | { readonly kind: 'cancel'; readonly call: number }
  /** the call should end with what it has */
  | { readonly kind: 'finish'; readonly call: number };

export type FromWorker = { readonly call: number; readonly index: number } & (
  | { readonly kind: 'progress'; readonly progress: unknown }
  | { readonly kind: 'result'; readonly result: unknown }
  | { readonly kind: 'failed'; readonly error: ErrorData }
  | { readonly kind: 'dropped' }
);

interface ErrorData {
  readonly name: string;
  readonly message: string;
  readonly stack?: string;
  /** what the error says besides: field, value, allowed ... */
  readonly details: Readonly<Record<string, unknown>>;
}

/** A worker as a pool sees it: a Worker of the browser, a thread of Node, or the thread of the pool itself. */
export interface JobPort {
  post(message: ToWorker): void;
  /** `onFault`: the worker could not be loaded, or died */
  listen(onMessage: (message: FromWorker) => void, onFault: (reason: string) => void): void;
  close(): void;
}

export function dataOfError(error: unknown): ErrorData {
  if (!(error instanceof Error)) return { name: 'Error', message: String(error), details: {} };
  const { name, message, stack } = error;
  return { name, message, ...(stack === undefined ? {} : { stack }), details: detailsOf(error) };
}

function detailsOf(error: Error): Readonly<Record<string, unknown>> {
  const { cause: _, name: __, ...own } = { ...error };
  try {
    return structuredClone(own);
  } catch {
    // functions cannot be sent
    return {};
  }
}

/** The error again, known by its name and fields: its class stays in the worker. */
export function errorOfData({ name, message, stack, details }: ErrorData): Error {
  const error = Object.assign(new Error(message), details, { name });
  if (stack !== undefined) error.stack = stack;
  return error;
}
