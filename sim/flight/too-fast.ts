/** A flight or a schedule that turns too fast to be followed: beyond anything a body does, but a file can ask for it. */
export class TooFastError extends Error {
  constructor(what: string, detail: string) {
    super(`${what} too fast to be followed: ${detail}`);
    this.name = 'TooFastError';
  }
}
