// Special words explain themselves in four lines of the one glossary.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTerm } from '../../src/app/terms/term-lines.ts';
import type { TermName } from '../../src/app/terms/term-name.ts';

const glossary = readFileSync(new URL('../../docs/glossary.md', import.meta.url), 'utf8');
const NAMES: readonly TermName[] = ['tilt', 'longAxis', 'momentOfInertia', 'angularMomentum', 'wobble'];
/** what is read at a glance beside a picture */
const LONGEST = 95;

describe('special words', () => {
  it.each(NAMES)('%s has four lines, each a sentence, and they are those of the glossary', (name) => {
    const { title, lines } = readTerm(name);
    expect(lines).toHaveLength(4);
    for (const line of lines) {
      expect(line).toMatch(/^[A-Z].*\.$/);
      expect(line.length).toBeLessThanOrEqual(LONGEST);
      expect(glossary).toContain(line);
    }
    expect(glossary).toContain(`### ${title}\n`);
  });

  it('those of the glossary are these, and no other', () => {
    const part = glossary.split('## Words that explain themselves')[1].split(/\n## /)[0];
    expect([...part.matchAll(/^### (.+)$/gm)].map(([, title]) => title)).toEqual(
      NAMES.map((name) => readTerm(name).title),
    );
  });

  it('a glossary without a word has no lines for it: nothing is filled in', () => {
    expect(readTerm('tilt', glossary.replace('### Tilt', '### Lean')).lines).toEqual([]);
  });
});
