/** Ctrl+C on the shell: work ends with what it has; a second one ends the program, as without us. */

/** What a command prints, and what it says when it was stopped before its end. */
export interface CommandOutput {
  readonly out: string;
  /** on stderr; the exit code is then 130 */
  readonly interrupted?: string;
}

/** As a shell reports a program ended by SIGINT: 128 + 2. */
export const INTERRUPTED = 130;

export function onInterrupt(stop: () => void): () => void {
  process.once('SIGINT', stop);
  return () => void process.off('SIGINT', stop);
}

export const yieldToEventLoop = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
