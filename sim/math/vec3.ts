/** Three-vectors as plain triples. No physics. */
export type Triple = [number, number, number];
type V = readonly [number, number, number] | Triple;

export const add = (a: V, b: V): Triple => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: V, b: V): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: V, k: number): Triple => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: V, b: V): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const norm = (a: V): number => Math.hypot(a[0], a[1], a[2]);
/** a + k b */
export const addScaled = (a: V, b: V, k: number): Triple => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
