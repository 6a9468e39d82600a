/** Shapes that the user kept, in this browser: what is read back is checked, and another tab's shapes are not lost. */
import type { ShapeData } from '../../sim/index.ts';
import { isObject } from './record-version.ts';

export const PLACE = 'shapeflight.shapes';
/** What was there and is no list at all. */
const DAMAGED = `${PLACE}.damaged`;
const MOST = 200;

type OwnShapeList = Readonly<Record<string, ShapeData>>;

interface OwnShapes {
  read(): OwnShapeList;
  /** what is there and is no list at all */
  damaged(): string | undefined;
  /** false: the browser refused */
  keep(id: string, shape: ShapeData): boolean;
  remove(id: string): boolean;
}

export function makeOwnShapes(store: Storage | undefined): OwnShapes {
  const readText = (): string | null => {
    try {
      return store?.getItem(PLACE) ?? null;
    } catch {
      return null;
    }
  };
  // read again before each writing: another tab may have kept one meanwhile; what cannot be read here is written as it was
  const write = (change: (list: Record<string, unknown>) => void): boolean => {
    const text = readText();
    const list = parseList(text);
    try {
      if (!store) return false;
      if (text && !list) store.setItem(DAMAGED, text);
      const next = { ...list };
      change(next);
      store.setItem(PLACE, JSON.stringify(next));
      return true;
    } catch {
      return false;
    }
  };
  return {
    read: () => {
      const whole = Object.entries(parseList(readText()) ?? {}).filter(([, one]) => isShape(one));
      return Object.fromEntries(whole.slice(0, MOST)) as OwnShapeList;
    },
    damaged: () => {
      const text = readText();
      return text && !parseList(text) ? text : undefined;
    },
    keep: (id, shape) => write((list) => Object.assign(list, { [id]: shape })),
    remove: (id) => write((list) => delete list[id]),
  };
}

function parseList(text: string | null): Record<string, unknown> | undefined {
  try {
    const list: unknown = JSON.parse(text ?? '{}');
    return isObject(list) && !Array.isArray(list) ? list : undefined;
  } catch {
    return undefined;
  }
}

const isShape = (one: unknown): boolean =>
  isObject(one) &&
  typeof one.title === 'string' &&
  typeof one.word === 'string' &&
  isObject(one.angles) &&
  Object.values(one.angles).every((deg) => Number.isFinite(deg) && Math.abs(Number(deg)) <= 720);

/** A name for the file, from the title: letters and digits, and a number where it is taken. */
export function nameShape(title: string, isTaken: (id: string) => boolean): string {
  const stem = title
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, ' ')
    .trim()
    .split(' ')
    .map((word, i) => (i === 0 ? word.toLowerCase() : word.charAt(0).toUpperCase() + word.slice(1).toLowerCase()))
    .join('')
    .slice(0, 40);
  const base = stem || 'ownShape';
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}${n}`;
    if (!isTaken(id)) return id;
  }
}
