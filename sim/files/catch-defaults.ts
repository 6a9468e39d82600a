/**
 * What a catch asks where its file does not: a gap of 0.05 m (range to 0.10: a modelling choice, no source found), 2 m/s along the arms (1.5 to 2: from
 * memory), arms of 15 kN/m (10 to 20: our judgement).
 */
export const CATCH_DEFAULTS = { gapM: 0.05, closingMPerS: 2, armsKNPerM: 15 } as const;
