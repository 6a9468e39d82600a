/** Widths of the outer columns of the bench, px. The time column takes the rest. */
export const LEFT = 216;
const RIGHT = 440;
/** on a page too narrow for numbers and pictures beside each other */
const NARROW = { page: 1160, right: 372 };
export const rightOf = (width: number): number => (width < NARROW.page ? NARROW.right : RIGHT);
/** px of the air that the flight keeps while the athlete is held in it, large. */
export const FLIGHT_STRIP = 96;
