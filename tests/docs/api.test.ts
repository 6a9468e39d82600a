// docs/api.md is what the sources say now; `npm run api` writes it. No function comes to the door without a word on it.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import * as door from '../../sim/index.ts';
import { makeApiPage, readApi } from './api-page.ts';

const page = path.resolve(import.meta.dirname, '../../docs/api.md');
const entries = readApi();
if (import.meta.env.MODE === 'api') writeFileSync(page, makeApiPage(entries));

it('names every value of the door, and no other', () => {
  expect(entries.map(({ name }) => name).sort()).toEqual(Object.keys(door).sort());
});

it('is up to date', () => expect(readFileSync(page, 'utf8')).toBe(makeApiPage(entries)));

it('every function is said in words', () => {
  expect(entries.filter(({ isFunction, says }) => isFunction && says === '').map(({ name }) => name)).toEqual([]);
});
