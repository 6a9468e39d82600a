/** The usual caution, in its one place. It is in the app, on stdout, in summaries and docs; never inside a CSV. */
export const CAUTION =
  'A model, not coaching advice. New skills only with a qualified coach, progressions, spotting and matting; local and federation rules come first.';
