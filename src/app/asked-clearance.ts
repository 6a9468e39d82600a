/** What is asked of the distance from rail, table or board at a first visit, m: that of a verdict (sim/measure/clearance.ts), which a test holds them to. */
export const FIRST_ASKED = 0.1;
