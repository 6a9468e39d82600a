// CITATION.cff has the fields that the Citation File Format 1.2.0 asks for, the version of the package, and names no one who is not.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import pkg from '../../package.json' with { type: 'json' };

const text = readFileSync(path.resolve(import.meta.dirname, '../../CITATION.cff'), 'utf8');
/** Fields at the top level of the format (Druskat et al. 2021, CFF 1.2.0), of which the first four are needed. */
const NEEDED = ['cff-version', 'message', 'title', 'authors'];
const KNOWN =
  'abstract commit contact date-released doi identifiers keywords license license-url preferred-citation references repository repository-artifact repository-code type url version'
    .split(' ')
    .concat(NEEDED);

it('has what is needed and nothing unknown, each once', () => {
  const fields = [...text.matchAll(/^([a-z-]+):/gm)].map((m) => m[1]);
  expect(new Set(fields).size).toBe(fields.length);
  expect(fields.filter((f) => !KNOWN.includes(f))).toEqual([]);
  expect(NEEDED.filter((f) => !fields.includes(f))).toEqual([]);
  expect(text).toMatch(/^cff-version: 1\.2\.0$/m);
  expect(text).toMatch(/^type: (software|dataset)$/m);
  expect(text).not.toContain('\t');
});

it('says version and licence of the package, and its authors as a body without invented names', () => {
  expect(text).toContain(`\nversion: ${pkg.version}\n`);
  expect(text).toContain(`\nlicense: ${pkg.license}\n`);
  expect(text).toMatch(/\nauthors:\n {2}- name: The Shapeflight authors\n/);
  expect(text).not.toMatch(/orcid|given-names|family-names|doi/);
});
