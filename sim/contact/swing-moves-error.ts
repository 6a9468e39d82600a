/** Keys of a swing that cannot be swung: out of order, or asking of the body what the arms cannot follow. */
export class SwingMovesError extends Error {
  constructor(detail: string) {
    super(`the swing cannot be swung: ${detail}`);
    this.name = 'SwingMovesError';
  }
}
