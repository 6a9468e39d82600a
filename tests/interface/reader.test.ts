// What is read beside the bench: all of a lesson is in it, links lead where they say, and what is for those who write code is left out.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { type Block, parseLine, parseMarkdown, slugOf } from '../../src/features/read/markdown.ts';
import { blocksOf, listFound, placeOf, titleOf } from '../../src/features/read/pages.ts';

const textOf = (block: Block): string => {
  const line = (all: readonly { readonly text: string }[]): string => all.map(({ text }) => text).join('');
  switch (block.kind) {
    case 'heading':
      return block.text;
    case 'paragraph':
      return line(block.line);
    case 'list':
      return block.items.map(line).join(' ');
    case 'table':
      return [block.head.join(' '), ...block.rows.map((row) => row.map(line).join(' '))].join(' ');
  }
};
const words = (text: string): string[] => text.split(/[^\p{L}\p{N}]+/u).filter(Boolean);

const folder = new URL('../../docs/lessons/', import.meta.url);
const lessons = readdirSync(folder).flatMap((name) => (name === 'README.md' ? [] : [name.slice(0, -'.md'.length)]));

describe.each(lessons)('the lesson %s', (page) => {
  const source = readFileSync(new URL(`${page}.md`, folder), 'utf8');
  it('is there word for word, in its order', () => {
    const shown = words(blocksOf(page).map(textOf).join(' '));
    // numbers of steps are those of the list, and addresses are behind the words
    const written = words(source.replace(/^\d+\. /gm, '').replace(/\]\([^)]*\)/g, ']'));
    expect(shown).toEqual(written);
  });
  it('has steps, and the caution before them', () => {
    const steps = blocksOf(page).findIndex((block) => block.kind === 'list' && block.ordered);
    const caution = blocksOf(page).findIndex((block) => textOf(block).includes('A model, not coaching advice'));
    expect(steps).toBeGreaterThan(caution);
    expect(caution).toBeGreaterThan(0);
  });
});

test('the glossary says what words mean and how the page says them, not what they are called in code', () => {
  const text = blocksOf('glossary').map(textOf).join('\n');
  expect(text).toContain('The body leans to one side of the way it somersaults.');
  for (const code of ['parseSkill', 'SkillFile', 'DeferredCommand', 'yieldToEventLoop', '(not said)'])
    expect(text).not.toContain(code);
  const slugs = blocksOf('glossary').flatMap((block) => (block.kind === 'heading' ? [block.slug] : []));
  expect(slugs[1]).toBe('words-that-explain-themselves');
});

test('the list of lessons leads to each of them, and to nothing that is not in the reader', () => {
  const links = blocksOf('lessons').flatMap((block) =>
    block.kind === 'table' ? block.rows.flat(2).flatMap((one) => (one.kind === 'link' ? [one] : [])) : [],
  );
  expect(links.map(({ href }) => placeOf('lessons', href)?.page).sort()).toEqual(lessons.toSorted());
  for (const { text, href } of links) expect(titleOf(placeOf('lessons', href)?.page ?? 'lessons')).toBe(text);
  expect(placeOf('coach', '../glossary.md#Tilt')).toEqual({ page: 'glossary', at: 'tilt' });
  expect(placeOf('glossary', 'conventions.md')).toBeUndefined();
  expect(placeOf('coach', 'https://example.org/')).toBeUndefined();
});

test('Find has every lesson, and finds it by whom it is for', () => {
  const found = listFound().filter(({ group }) => group === 'lesson');
  expect(found.map(({ place }) => place.page).sort()).toEqual(lessons.toSorted());
  const words = found.find(({ place }) => place.page === 'class-who-pays')?.words ?? [];
  expect(words.join()).toContain('For a class');
});

test('every word that Find knows of is a place of the glossary', () => {
  const places = new Set(
    blocksOf('glossary').flatMap((block) =>
      block.kind === 'heading'
        ? [block.slug]
        : block.kind === 'table'
          ? block.rows.map(([first]) => slugOf(first.map(({ text }) => text).join('')))
          : [],
    ),
  );
  const terms = listFound().filter(({ group }) => group === 'term');
  expect(terms.length).toBeGreaterThan(60);
  for (const { place } of terms) expect(places).toContain(place.at);
});

test('what it does not know stays text', () => {
  expect(parseLine('2 * 3 is six, and a_b stays')).toEqual([{ kind: 'text', text: '2 * 3 is six, and a_b stays' }]);
  expect(parseMarkdown('# A title\n\n1. One\n   goes on\n2. Two **bold** `code`')).toEqual([
    { kind: 'heading', level: 1, text: 'A title', slug: 'a-title' },
    {
      kind: 'list',
      ordered: true,
      items: [
        [{ kind: 'text', text: 'One goes on' }],
        [
          { kind: 'text', text: 'Two ' },
          { kind: 'bold', text: 'bold' },
          { kind: 'text', text: ' ' },
          { kind: 'code', text: 'code' },
        ],
      ],
    },
  ]);
});
