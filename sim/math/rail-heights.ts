/** Heights and radii of the rails by name, m: FIG apparatus norms, from memory. What else a rail is: contact/rail.ts. */
export const RAIL_HEIGHTS = { highBar: 2.8, unevenHigh: 2.5, unevenLow: 1.7 } as const;
export const RAIL_RADII = { highBar: 0.014, unevenHigh: 0.02, unevenLow: 0.02 } as const;
export type RailName = keyof typeof RAIL_HEIGHTS;
