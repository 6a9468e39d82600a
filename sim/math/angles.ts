// Factors between radians and the units that people read. x * DEG is x in degrees; x * RAD takes x from degrees to
// radians; x * REV takes x from revolutions to radians, and x / REV back.
export const DEG = 180 / Math.PI;
export const RAD = Math.PI / 180;
export const REV = 2 * Math.PI;

/** The angle plus the whole turns that bring it nearest to `near`. */
export const turnedTo = (angle: number, near: number): number => angle + REV * Math.round((near - angle) / REV);
