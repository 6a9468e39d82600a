// The pictures in docs/pictures/ are the ones the engine draws. `npm run pictures` writes them anew.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { pictures } from './pictures.ts';

const folder = path.resolve(import.meta.dirname, '../../docs/pictures');

for (const [name, draw] of Object.entries(pictures))
  test(`docs/pictures/${name} is current`, () => {
    const file = path.join(folder, name);
    const now = draw();
    if (import.meta.env.MODE === 'pictures') writeFileSync(file, now);
    expect(now).not.toContain('NaN');
    expect(readFileSync(file, 'utf8')).toBe(now);
  });
