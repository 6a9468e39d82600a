// A part that did not load is loaded again, and at another address where the browser remembers the failure.
import { expect, test } from 'vitest';
import { loadPart } from '../../src/app/load-part.ts';

const fault = new TypeError('Failed to fetch dynamically imported module: http://127.0.0.1:4173/assets/why-1a2b.js');

test('is loaded once, however many ask', async () => {
  let n = 0;
  const load = loadPart(
    async () => ({ n: ++n }),
    (m) => m.n,
  );
  expect(await Promise.all([load(), load()])).toEqual([1, 1]);
  expect(await load()).toBe(1);
});

test('after a failure it is loaded again', async () => {
  let n = 0;
  const load = loadPart(
    () => (++n === 1 ? Promise.reject(fault) : Promise.resolve({ n })),
    (m) => m.n,
  );
  await expect(load()).rejects.toThrow('why-1a2b.js');
  expect(await load()).toBe(2);
});

test('where the failure is remembered, the second time another address is asked for', async () => {
  const asked: string[] = [];
  const load = loadPart(
    (): Promise<{ n: number }> => Promise.reject(fault),
    (m) => m.n,
    async (address) => {
      asked.push(address);
      return { n: 7 };
    },
  );
  await expect(load()).rejects.toThrow();
  expect(asked).toEqual([]);
  expect(await load()).toBe(7);
  expect(asked).toEqual(['http://127.0.0.1:4173/assets/why-1a2b.js?again=2']);
});

test('each further time has an address of its own; an error without one is passed on', async () => {
  const asked: string[] = [];
  const load = loadPart(
    (): Promise<{ n: number }> => Promise.reject(fault),
    (m) => m.n,
    (address) => {
      asked.push(address);
      return Promise.reject(fault);
    },
  );
  for (let i = 0; i < 3; i++) await expect(load()).rejects.toThrow();
  expect(new Set(asked).size).toBe(2);
  const nameless = loadPart(
    () => Promise.reject(new TypeError('Importing a module script failed.')),
    () => 1,
  );
  for (let i = 0; i < 2; i++) await expect(nameless()).rejects.toThrow('Importing a module script failed.');
});
