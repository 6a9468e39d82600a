/** Shapes that the user kept, in this browser: what is read back is checked, and another tab's shapes are not lost. */
import type { ShapeData } from '../../sim/index.ts';

const PLACE = 'shapeflight.shapes';
const MOST = 200;

type OwnShapeList = Readonly<Record<string, ShapeData>>;

interface OwnShapes {
  read(): OwnShapeList;
  /** false: the browser refused */
  keep(id: string, shape: ShapeData): boolean;
  remove(id: string): boolean;
}

export function makeOwnShapes(store: Storage | undefined): OwnShapes {
  const read = (): OwnShapeList => parseShapes(store?.getItem(PLACE) ?? null);
  // read again before each writing: another tab may have kept one meanwhile
  const write = (change: (list: Record<string, ShapeData>) => void): boolean => {
    if (!store) return false;
    const list = { ...read() };
    change(list);
    try {
      store.setItem(PLACE, JSON.stringify(list));
      return true;
    } catch {
      return false;
    }
  };
  return {
    read,
    keep: (id, shape) => write((list) => Object.assign(list, { [id]: shape })),
    remove: (id) => write((list) => delete list[id]),
  };
}

function parseShapes(text: string | null): OwnShapeList {
  if (!text) return {};
  try {
    const all = JSON.parse(text) as Record<string, Partial<ShapeData>>;
    const whole = Object.entries(all).filter(
      ([, s]) =>
        typeof s?.title === 'string' &&
        typeof s.word === 'string' &&
        typeof s.angles === 'object' &&
        s.angles !== null &&
        Object.values(s.angles).every((deg) => Number.isFinite(deg) && Math.abs(deg) <= 720),
    );
    return Object.fromEntries(whole.slice(0, MOST)) as OwnShapeList;
  } catch {
    return {};
  }
}

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
