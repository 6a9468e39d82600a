/** Errors that say that one flight cannot be: a search walks around them, and lets every other pass. */

/** Faults of one flight, or of a body or keys at one draw, that a search walks around; everything else is a fault of the problem. */
const OF_FLIGHT = new Set([
  'FieldError',
  'LegEndError',
  'ScheduleOrderError',
  'NoTouchdownError',
  'NoAgreementError',
  'TooFastError',
  'TakeoffError',
  'NoReleaseError',
  'SwingMovesError',
]);
/** Whether an error is of the flight asked for (no touchdown, keys out of order, ...), not of the program. */
export const isOfFlight = (error: unknown): boolean => error instanceof Error && OF_FLIGHT.has(error.name);
