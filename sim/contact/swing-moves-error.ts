/** Keys of a swing that cannot be swung: out of order, or asking of the body what the arms cannot follow. */
export class SwingMovesError extends Error {
  /** the key that does not come after the one before it; left out: keys over swing angle bend the body too fast */
  readonly late?: { readonly joint: string; readonly key: number; readonly round: number };
  constructor(detail: string, late?: SwingMovesError['late']) {
    super(`the swing cannot be swung: ${detail}`);
    this.name = 'SwingMovesError';
    if (late) this.late = late;
  }
}
