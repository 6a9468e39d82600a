// The page is built without what its schemas say of the meaning of a field: what is checked stays.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { dropMeanings } from '../../src/engine/bare-schemas-plugin.ts';

it('drops the meaning and nothing else', () => {
  const code =
    "v.object({ a: say(within(0, may(1, 'In.'), 'm'), 'A length, (in) m.'), b: may(text(3)), c: other(x, 'y') })";
  expect(dropMeanings(code)).toBe("v.object({ a: say(within(0, may(1), 'm')), b: may(text(3)), c: other(x, 'y') })");
});

it('leaves no meaning in a file of schemas, and every range', () => {
  const dir = new URL('../../sim/files/', import.meta.url);
  const files = readdirSync(dir).filter((name) => name.endsWith('-schema.ts') && name !== 'check-schema.ts');
  expect(files.length).toBeGreaterThan(3);
  for (const name of files.filter((one) => one !== 'json-schema.ts')) {
    const code = readFileSync(new URL(name, dir), 'utf8');
    const bare = dropMeanings(code);
    expect(bare.length, name).toBeLessThan(code.length);
    expect(dropMeanings(bare)).toBe(bare);
    expect(bare.match(/within\([^()]*\)/g)).toEqual(code.match(/within\([^()]*\)/g));
  }
});
