/** Widths of the outer columns of the bench, px. The time column takes the rest. */
export const LEFT = 216;
export const RIGHT = 440;
