// docs/validation.md is what the checks got when they last wrote it, and no check in it is without its source. `npm run validation` writes it.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { readKept } from '../validation/record.ts';
import { idOf, makeValidationPage, PARTS, SOURCES, TAGS } from '../validation/sources.ts';

const page = path.resolve(import.meta.dirname, '../../docs/validation.md');
if (import.meta.env.MODE === 'validation-page') writeFileSync(page, makeValidationPage());

it('the page is of what is kept', () => expect(readFileSync(page, 'utf8')).toBe(makeValidationPage()));

it('every check has its source and tag, and every source its check', () => {
  const ids = new Set(Object.keys(PARTS).flatMap((part) => readKept(part).rows.map(idOf)));
  expect([...ids].sort()).toEqual(Object.keys(SOURCES).sort());
  for (const { source, tag } of Object.values(SOURCES)) {
    expect(source.length).toBeGreaterThan(10);
    expect(Object.keys(TAGS)).toContain(tag);
  }
});

it('says what was never compared', () =>
  expect(readFileSync(page, 'utf8')).toContain('Never compared with a measured athlete'));
