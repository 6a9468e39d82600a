// The digest in what leaves the page: of a changed skill only what is handed on is in it, so that no guess at what stays can be tried on it.
import { expect, test } from 'vitest';
import { athletes, skills } from '../../presets/index.ts';
import { keepBack } from '../../sim/index.ts';
import { handedProvenanceOf } from '../../src/engine/provenance.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const NOTHING = { name: false, age: false, mass: false, sheets: false, film: false };
const own = athletes['ilse-marrow'];

function digestOf(title: string, name: string, along = NOTHING): string {
  const athlete = { ...own, name };
  const file = { ...skills['back-tuck'], title, athlete };
  const result = engine.fly(file);
  const [input] = handedProvenanceOf(result, 'a test', keepBack(file, athlete, along).file).inputs;
  return input.sha256;
}

test('a name that stays is not in the digest of a changed skill; one that goes is', () => {
  expect(digestOf('Mine', 'Wren')).toBe(digestOf('Mine', 'Lark'));
  const named = { ...NOTHING, name: true };
  expect(digestOf('Mine', 'Wren', named)).not.toBe(digestOf('Mine', 'Lark', named));
});

test('a ready skill is named as it is', () => {
  const file = skills['back-tuck'];
  const result = engine.fly(file);
  const [input] = handedProvenanceOf(result, 'a test', keepBack(file, result.athlete, NOTHING).file).inputs;
  expect(input.ready).toEqual({ id: 'back-tuck', changed: false });
});
