/** Pictures of the catalogue's tiles, kept while the tool is closed. Each is drawn once for an athlete, some in each task. */
import type { ShapeData, ShapeMoments } from '../../../sim/index.ts';
import { keptState, type Page } from '../../app/page.ts';
import { inNextTask } from '../../ui/frame.ts';

export interface TileEntry {
  readonly id: string;
  readonly shape: ShapeData;
  readonly angles: readonly number[];
  readonly moments: ShapeMoments;
}

const SIZE = { width: 82, height: 68 };
/** Drawing takes as long as this in one task, ms. */
const AT_ONCE = 6;

function makeTilePictures({ doc, flight, services }: Page) {
  const known = new Map<string, HTMLElement>();
  let waiting: (() => void)[] = [];
  let list: { of: string; shapes: Readonly<Record<string, ShapeData>>; entries: TileEntry[] } | undefined;
  // the athlete's body alone decides pictures and moments
  const athlete = (): string => JSON.stringify(doc.athlete());
  const work = (): void => {
    const end = performance.now() + AT_ONCE;
    do waiting.shift()?.();
    while (waiting.length > 0 && performance.now() < end);
    if (waiting.length > 0) inNextTask(work);
  };
  return {
    athlete,
    entries(shapes: Readonly<Record<string, ShapeData>>): readonly TileEntry[] {
      const of = athlete();
      if (list?.of === of && list.shapes === shapes) return list.entries;
      const { body } = flight.result().flight;
      const entries = Object.entries(shapes).map(([id, shape]) => {
        const angles = services.posing.poseOf(body, shape);
        return { id, shape, angles, moments: services.posing.moments(body, angles) };
      });
      if (list?.of !== of) {
        known.clear();
        waiting = [];
      }
      list = { of, shapes, entries };
      return entries;
    },
    /** An element is in one place: that of the tile with this id. */
    pictureOf({ id, angles }: TileEntry): HTMLElement {
      const key = `${id} ${angles.join()}`;
      const found = known.get(key);
      if (found) return found;
      const made = document.createElement('span');
      made.className = 'shape-picture';
      known.set(key, made);
      waiting.push(() => {
        made.innerHTML = services.pictures.poseTile(flight.result(), angles, SIZE.width, SIZE.height);
      });
      if (waiting.length === 1) inNextTask(work);
      return made;
    },
  };
}

export const useTilePictures = keptState(makeTilePictures);
