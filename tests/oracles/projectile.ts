/** A point in uniform gravity, no air (Galileo; any book of mechanics). SI. */

/** Level flight of duration T: take-off speed g T / 2, rise g T^2 / 8. */
export const levelFlight = (T: number, g: number): { speed: number; rise: number } => ({
  speed: (g * T) / 2,
  rise: (g * T * T) / 8,
});

/** From height y0 with speed v up to the height y1: time, top, speed of arrival. */
export function fall(y0: number, v: number, y1: number, g: number) {
  const arrival = Math.sqrt(v * v + 2 * g * (y0 - y1));
  return { time: (v + arrival) / g, apex: y0 + (v * v) / (2 * g), arrival };
}
