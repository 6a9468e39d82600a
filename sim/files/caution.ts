/** The usual caution, in its one place. It is in the app, on stdout, in summaries and docs; never inside a CSV. */
export const CAUTION =
  'A model, not coaching advice. New skills only with a qualified coach, progressions, spotting and matting; local and federation rules come first.';

/** What was held against measured athletes, and what was not: beside the caution, on stdout, in JSON and in the app. */
export const COMPARED =
  'Compared with a measured athlete: nothing yet, neither flight, swing, contact nor landing. Bodies were compared with published moments of men alone.';
