/**
 * Posed frames as moments of a schedule. The first and the last are held shapes, the others are passed through: a body that came to rest in each of them would move in
 * jerks, and turn otherwise than it did. Every pose is also a shape of the file, named by its time. Where no frame was posed near take-off or touchdown the flight
 * that it began with lends its shape there.
 */
import type { Body } from '../body/body.ts';
import type { FileKey, FileSchedule, ShapeData } from '../files/schedule-schema.ts';
import { tidy, tidyDeg } from '../files/tidy.ts';
import { otherSide, withoutSide } from '../math/side.ts';
import { nearArms } from './first-pose.ts';

interface Moment {
  /** s from take-off */
  readonly t: number;
  readonly angles: readonly number[];
}

interface PosedMoments {
  readonly moments: readonly Moment[];
  /** the shape of the flight before, at take-off and at touchdown; left out: a frame was posed there */
  readonly takeoff?: readonly number[];
  readonly landing?: Moment;
}

export interface PosedSchedule {
  readonly schedule: FileSchedule;
  readonly shapes: Record<string, ShapeData>;
}

/** All times from take-off; two moments or more. */
export function scheduleOfPosed(body: Body, { moments, takeoff, landing }: PosedMoments): PosedSchedule {
  const all = [
    ...(takeoff ? [{ t: 0, angles: takeoff, title: 'As it took off', word: 'take-off' }] : []),
    ...moments.map(({ t, angles }) => {
      const word = `${sayTime(t, moments)} s`;
      return { t, angles, title: `At ${word}`, word };
    }),
    ...(landing ? [{ ...landing, title: 'As it landed', word: 'landing' }] : []),
  ];
  let near = all[0].angles;
  const rows = all.map((one) => {
    near = nearArms(body, one.angles, near);
    return { ...one, deg: near.map(tidyDeg), at: { anchor: 'takeoff' as const, s: tidy(one.t) } };
  });
  const keys: FileKey[] = [];
  body.angles.forEach(({ name, mirror }, a) => {
    if (rows.every((row) => row.deg[a] === rows[0].deg[a])) return;
    const isPaired = mirror !== a && rows.every((row) => row.deg[a] === row.deg[mirror]);
    if (isPaired && mirror < a) return;
    const angle = isPaired ? withoutSide(name) : name;
    for (const { at, deg } of rows.slice(1, -1)) keys.push({ angle, at, deg: deg[a], kind: 'pass' });
  });
  const [first, last] = [rows[0], rows[rows.length - 1]];
  return {
    schedule: {
      base: first.title,
      blocks: [first, last].map(({ title, at }) => ({ shape: title, from: at, to: at })),
      ...(keys.length > 0 ? { keys } : {}),
    },
    shapes: Object.fromEntries(
      rows.map(({ title, word, deg }): [string, ShapeData] => [title, { title, word, angles: namedAngles(body, deg) }]),
    ),
  };
}

/** Hundredths, or thousandths where two would be called the same. */
function sayTime(t: number, moments: readonly Moment[]): string {
  const isAlone = moments.filter((m) => m.t.toFixed(2) === t.toFixed(2)).length === 1;
  return Math.max(t, 0).toFixed(isAlone ? 2 : 3);
}

/** Those that are not 0; one name where both sides are equal. */
function namedAngles(body: Body, deg: readonly number[]): Record<string, number> {
  const out: Record<string, number> = {};
  body.angles.forEach(({ name, mirror }, a) => {
    if (deg[a] === 0) return;
    const isPaired = mirror !== a && otherSide(name) !== undefined && deg[mirror] === deg[a];
    if (!isPaired) out[name] = deg[a];
    else if (mirror > a) out[withoutSide(name)] = deg[a];
  });
  return out;
}
