/** How much a sheet may hold. A sheet is data from anywhere: these bound its time and memory before anything is computed. */
export const MOST_LINES = 200;
export const LONGEST_LINE = 400;
/** nodes of one formula, and of all formulas together */
export const MOST_NODES = 200;
export const MOST_NODES_IN_ALL = 4000;
/** quantities with a ± of their own */
export const MOST_SPREADS = 60;
/** lines set against the simulation */
export const MOST_COMPARED = 40;
/** letters of a name */
export const LONGEST_NAME = 40;
