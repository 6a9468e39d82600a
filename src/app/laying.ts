/** What the catalogue lays down and how: the time of the move, the arms' way, and a shape that is being dragged to the ruler. */

import { createMemo, createSignal } from 'solid-js';
import type { ArmPath, ShapeData } from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';
import { withoutSide } from '../../sim/math/side.ts';
import { changeBlock } from '../document/edits.ts';
import { getStorage } from '../document/keep.ts';
import { carryShape, layShape } from '../document/lay-shape.ts';
import { makeOwnShapes, nameShape, PLACE } from '../document/own-shapes.ts';
import { keyTexts } from './key-words.ts';
import { keptState, type Page } from './page.ts';
import { makeSaid } from './said.ts';
import { texts } from './words.ts';

export const ARM_PATHS: readonly ArmPath[] = ['direct', 'front', 'side'];
export type Sorting = 'long' | 'lateral' | 'name';

/** A shape on its way to the ruler. */
interface Carried {
  readonly id: string;
  readonly title: string;
  /** where it would be laid; undefined: not over the ruler */
  readonly at: number | undefined;
  readonly clientX: number;
  readonly clientY: number;
}

export const MOVE = { least: 0.03, most: 1, usual: 0.15 };

function makeLaying(page: Page) {
  const { doc, services, flight, cursor } = page;
  const store = makeOwnShapes(getStorage('localStorage'));
  const damaged = store.damaged();
  if (damaged)
    void import('./put-aside.ts').then(
      ({ putAside }) => putAside(page.shell, 'shapes', PLACE, damaged),
      () => undefined,
    );
  /** what the browser refused to keep */
  const [here, setHere] = createSignal<Readonly<Record<string, ShapeData>>>({});
  const readAll = (): Readonly<Record<string, ShapeData>> => ({ ...store.read(), ...here() });
  const [own, setOwn] = createSignal(readAll());
  const [moveS, setMoveS] = createSignal(MOVE.usual);
  const [arms, setArms] = createSignal<ArmPath>('direct');
  const [sorting, setSorting] = createSignal<Sorting>('long');
  const [carried, setCarried] = createSignal<Carried>();
  const [said, setSaid] = makeSaid(doc);
  const [refused, setRefused] = createSignal(false);
  if (typeof window !== 'undefined') window.addEventListener('storage', () => setOwn(readAll()));

  /** the catalogue, the file's own and the user's own; a file's shape goes before one of the same name */
  const fileShapes = createMemo(() => doc.file().shapes);
  const shapes = createMemo(
    (): Record<string, ShapeData> => ({ ...services.presets.shapes, ...own(), ...fileShapes() }),
  );
  const isOwn = (id: string): boolean => own()[id] !== undefined;

  const lay = (id: string, s: number): void => {
    const data = shapes()[id];
    if (!data || !flight.edited()) return;
    const at = Math.round(s * 1000) / 1000;
    let file = doc.file();
    if (services.presets.shapes[id] === undefined) file = carryShape(file, id, data);
    file = layShape(file, { shape: id, at, moveS: moveS(), arms: arms() }, flight.anchors());
    if (file === doc.file()) return;
    doc.edit(file, keyTexts.laid(data.title));
    cursor.set(at);
    setSaid(keyTexts.laidAt(data.title, at.toFixed(2)));
  };
  /** Another shape in the place of one that is there. */
  const replace = (index: number, id: string): void => {
    const data = shapes()[id];
    if (!data || !flight.edited()) return;
    let file = doc.file();
    const old = flight.spans()[index]?.title ?? '';
    if (services.presets.shapes[id] === undefined) file = carryShape(file, id, data);
    doc.edit(changeBlock(file, index, { shape: id, adjustDeg: undefined }), texts.shapes.changed(old));
  };
  /** The pose at the cursor becomes a shape of the user's. */
  const keep = (title: string): void => {
    const id = nameShape(title, (name) => shapes()[name] !== undefined);
    const { body } = flight.result().flight;
    const now = services.posing.anglesAt(flight.result(), cursor.at());
    const angles: Record<string, number> = {};
    body.angles.forEach(({ name, mirror }, a) => {
      const deg = Math.round(now[a] * DEG * 10) / 10;
      const other = Math.round(now[mirror] * DEG * 10) / 10;
      if (mirror !== a && other === deg) {
        if (deg !== 0) angles[withoutSide(name)] = deg;
      } else if (deg !== 0) angles[name] = deg;
    });
    const shape = { title, word: title.toLowerCase().slice(0, 40), angles };
    const isKept = store.keep(id, shape);
    setRefused(!isKept);
    // as long as the page lives it is there all the same
    if (!isKept) setHere({ ...here(), [id]: shape });
    setOwn(readAll());
    if (isKept) setSaid(keyTexts.keptAs(title));
  };
  const forget = (id: string): void => {
    const { [id]: _, ...others } = here();
    setHere(others);
    if (!store.remove(id)) setRefused(true);
    setOwn(readAll());
  };
  return {
    shapes,
    isOwn,
    own,
    moveS,
    setMoveS,
    arms,
    setArms,
    sorting,
    setSorting,
    carried,
    setCarried,
    lay,
    replace,
    keep,
    forget,
    said,
    refused,
  };
}
export const useLaying = keptState(makeLaying);
