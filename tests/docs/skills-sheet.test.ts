// docs/skills-sheet.md shows every ready skill as it flies now. `npm run sheet` writes the page and its pictures.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { chains, skills } from '../../presets/index.ts';
import { flightsOf } from '../presets/flown.ts';
import { extentsOf, labelsOf } from './drawn.ts';
import { formatSheetPage, type SheetRow } from './sheet-page.ts';
import { skillPicture } from './skill-sheet.ts';

const docs = path.resolve(import.meta.dirname, '../../docs');
const page = path.join(docs, 'skills-sheet.md');
const fileOf = (id: string): string => path.join(docs, 'pictures', `skills-${id}.svg`);
const isWriting = import.meta.env.MODE === 'sheet';

const rows: readonly (SheetRow & { readonly drawn: string })[] = Object.entries({ ...skills, ...chains })
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([id, file]) => {
    const { legs } = flightsOf(id);
    const { flight } = legs[legs.length - 1].whole;
    const { title, note = '' } = file;
    return { id, title, note, airTime: flight.duration, drawn: skillPicture({ title, flight }) };
  });

if (isWriting) {
  for (const name of readdirSync(path.join(docs, 'pictures')))
    if (/^skills-.*\.svg$/.test(name)) rmSync(path.join(docs, 'pictures', name));
  for (const { id, drawn } of rows) writeFileSync(fileOf(id), drawn);
  writeFileSync(page, formatSheetPage(rows));
}

/** px: a difference that nobody sees; measured 0 */
const SEEN = 0.5;

test('the page says of each skill what its file and its flight say', () =>
  expect(readFileSync(page, 'utf8')).toBe(formatSheetPage(rows)));

describe.each(rows)('$id', ({ id, drawn }) => {
  test('is drawn at its eight instants as it flies', () => {
    const kept = readFileSync(fileOf(id), 'utf8');
    expect(labelsOf(kept)).toEqual(labelsOf(drawn));
    const [was, is] = [extentsOf(kept), extentsOf(drawn)];
    expect([...was.keys()].sort()).toEqual([...is.keys()].sort());
    for (const [colour, extent] of is)
      for (const side of ['left', 'right', 'top', 'bottom'] as const)
        expect(Math.abs((was.get(colour)?.[side] ?? Number.NaN) - extent[side])).toBeLessThanOrEqual(SEEN);
  });
});
