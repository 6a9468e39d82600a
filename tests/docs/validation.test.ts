// docs/validation.md is what the checks got when they last wrote it, and no check in it is without its source. `npm run validation` writes it.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { COMPARED } from '../../sim/index.ts';
import { readKept } from '../validation/record.ts';
import { idOf, makeValidationPage, PARTS, SOURCES, TAGS } from '../validation/sources.ts';

const page = path.resolve(import.meta.dirname, '../../docs/validation.md');
if (import.meta.env.MODE === 'validation-page') writeFileSync(page, makeValidationPage());

it('the page is of what is kept', () => expect(readFileSync(page, 'utf8')).toBe(makeValidationPage()));

it('every check has its source and tag, and every source its check', () => {
  const ids = new Set(Object.keys(PARTS).flatMap((part) => readKept(part).rows.map(idOf)));
  expect([...ids].sort()).toEqual(Object.keys(SOURCES).sort());
  // what is read in print names its year; what is none says so
  for (const [id, { source, tag }] of Object.entries(SOURCES)) {
    if (tag === 'V2') expect(source, id).toMatch(/\b(19|20)\d\d\b/);
    if (tag === 'P') expect(source, id).toContain('no source');
    if (tag === 'W') expect(source, id).toMatch(/MuJoCo|written for the test alone/);
  }
  const used = new Set(Object.values(SOURCES).map(({ tag }) => tag));
  expect([...used].sort()).toEqual(Object.keys(TAGS).sort());
});

it('every test that is named writes its part', () => {
  for (const [part, [, file]] of Object.entries(PARTS))
    expect(readFileSync(path.resolve(import.meta.dirname, '../..', file), 'utf8'), file).toContain(
      `recordChecks('${part}')`,
    );
});

it('names each thing that the app says was never compared', () => {
  const list = makeValidationPage().split('\n## ')[1];
  const things = /neither (.*)\. Bodies/.exec(COMPARED)?.[1].split(/, | nor /) ?? [];
  expect(things.length).toBeGreaterThan(3);
  for (const thing of things) {
    const word = thing === 'contact' ? 'push' : thing;
    expect(list, thing).toMatch(new RegExp(`^- .*\\b${word}\\b`, 'm'));
  }
});
