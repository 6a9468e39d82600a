/** What is wrong with a clip, by a code; and what an error of reading means. */
import type { ClipFault, ClipFaultCode } from './clip-source.ts';

class Fault extends Error implements ClipFault {
  override readonly name = 'ClipFault';
  readonly code: ClipFaultCode;
  readonly what?: string;

  constructor(code: ClipFaultCode, what?: string, cause?: unknown) {
    super(what === undefined ? code : `${code}: ${what}`, { cause });
    this.code = code;
    if (what !== undefined) this.what = what;
  }
}

export const clipFault = (code: ClipFaultCode, what?: string, cause?: unknown): ClipFault =>
  new Fault(code, what, cause);

const GONE = ['NotFoundError', 'NotReadableError', 'SecurityError'];

/** An error from reading the file or decoding it. */
export function faultOf(error: unknown): ClipFault {
  if (error instanceof Fault) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  return clipFault(GONE.includes(name) ? 'cannotRead' : 'damaged', undefined, error);
}
