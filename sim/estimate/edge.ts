/**
 * The edge of a plain body as it can be moved: the one length, put in as a number, that makes its moment what it is. Of
 * sizes from a fifth to three times the present one the value of that line is found by bisection, so that who drags needs
 * no sheet computed in between.
 */
import type { Expression } from './expression.ts';
import { need, type Sheet } from './known-sheet.ts';
import { factorOf, type PlainBody } from './plain-body.ts';
import type { Edge } from './sheet-result.ts';

const SIZES = 29;
const LEAST = 0.2;
const MOST = 3;
const HALVINGS = 40;

/** A length that was typed, in one unit: 0.5 m, 5 ft. A readout is one too: it becomes a length when it is moved. */
function isPutIn(e: Expression): boolean {
  if (e.kind === 'link') return true;
  if (e.kind !== 'operation' || e.operator !== '*') return false;
  return e.a.kind === 'number' && e.b.kind === 'unit';
}

export function calcEdge(of: string, body: PlainBody, sheet: Sheet): Edge | undefined {
  const name = nearestLength(of, sheet);
  if (name === undefined) return undefined;
  const { value, shown } = need(name, sheet);
  const line = sheet.read.lineOf.get(name) ?? 0;
  const momentAt = (length: number): number => sheet.recompute(of, new Map([[name, length]]));
  const points: [size: number, value: number][] = [];
  for (let i = 0; i < SIZES; i++) {
    const size = body.size * (LEAST + ((MOST - LEAST) * i) / (SIZES - 1));
    const wanted = factorOf(body.kind) * body.mass * size * size;
    const length = solve(momentAt, wanted, value);
    if (length !== undefined) points.push([size, length / shown.factor]);
  }
  return points.length < 2 ? undefined : { line, name, unit: shown.name, points };
}

/** Between nothing and ten times the present value, where the moment grows with the length. */
function solve(momentAt: (length: number) => number, wanted: number, value: number): number | undefined {
  let [low, high] = [0, 10 * value];
  if (!(momentAt(low) <= wanted && momentAt(high) >= wanted)) return undefined;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (momentAt(middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The nearest line under this one that holds a length as a number. */
function nearestLength(of: string, sheet: Sheet): string | undefined {
  const seen = new Set<string>();
  let ring = sheet.read.quantities.get(of)?.needs ?? [];
  while (ring.length > 0) {
    for (const name of ring) {
      const quantity = sheet.read.quantities.get(name);
      const known = sheet.known.get(name);
      if (!quantity || !known) continue;
      const [mass, length, time] = known.checked.dimension;
      if (mass === 0 && length === 1 && time === 0 && known.value > 0 && isPutIn(quantity.expression)) return name;
    }
    for (const name of ring) seen.add(name);
    ring = ring.flatMap((name) => sheet.read.quantities.get(name)?.needs ?? []).filter((name) => !seen.has(name));
  }
  return undefined;
}
