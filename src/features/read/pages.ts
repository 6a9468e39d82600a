/** The pages that are read beside the bench: lessons and glossary, from the docs. They come with this part, so that they are there without a network. */
import glossary from '../../../docs/glossary.md?raw';
import type { FoundPage, ReadPlace } from '../../app/reading.ts';
import { type Block, parseMarkdown, slugOf } from './markdown.ts';
import { readTexts as t } from './words.ts';

type PageId = ReadPlace['page'];

/** by their addresses in the docs */
const files = import.meta.glob<string>('../../../docs/lessons/*.md', { query: '?raw', import: 'default', eager: true });
const texts = new Map<PageId, string>(
  Object.entries(files).map(([path, text]) => [path.slice(path.lastIndexOf('/') + 1, -'.md'.length), text]),
);
const list = texts.get('README') ?? '';
texts.delete('README');

const pathOf = (page: PageId): string =>
  page === 'glossary' ? 'glossary.md' : `lessons/${page === 'lessons' ? 'README' : page}.md`;

/** What is for those who write code is left out: columns, rows that say nothing on the page, a section. */
const CODE_COLUMNS = ['in code', 'not'];
const CODE_SECTIONS = ['verbs'];
const SAID = 'on the page';
const FIRST_SECTION = 'words-that-explain-themselves';

const textOf = (line: readonly { readonly text: string }[]): string => line.map(({ text }) => text).join('');

function forReaders(block: Block): Block[] {
  if (block.kind !== 'table' || !block.head.includes(SAID)) return [block];
  const kept = block.head.map((name, i) => (CODE_COLUMNS.includes(name) ? -1 : i)).filter((i) => i >= 0);
  const said = block.head.indexOf(SAID);
  const rows = block.rows.filter((row) => !/^\((not said|no identifier)\)/.test(textOf(row[said] ?? [])));
  return rows.length === 0
    ? []
    : [
        {
          ...block,
          head: kept.map((i) => block.head[i]),
          rows: rows.map((row) => kept.map((i) => row[i] ?? [])),
        },
      ];
}

/** By sections under the title; the words with four lines each come first. */
function glossaryBlocks(): Block[] {
  const sections: Block[][] = [[]];
  for (const block of parseMarkdown(glossary).flatMap(forReaders)) {
    if (block.kind === 'heading' && block.level === 2) sections.push([]);
    sections[sections.length - 1].push(block);
  }
  const slug = ([first]: Block[]): string => (first?.kind === 'heading' ? first.slug : '');
  const [title, ...rest] = sections.filter((one) => one.length > 1 && !CODE_SECTIONS.includes(slug(one)));
  rest.sort((a, b) => Number(slug(b) === FIRST_SECTION) - Number(slug(a) === FIRST_SECTION));
  return [...title.slice(0, 1), ...rest.flat()];
}

/** What the tests do with lessons is no matter for who reads them. */
const lessonList = (): Block[] =>
  parseMarkdown(list).filter(
    (block) => block.kind !== 'paragraph' || !block.line.some(({ kind }) => kind === 'code' || kind === 'bold'),
  );

const known = new Map<PageId, readonly Block[]>();

export function blocksOf(page: PageId): readonly Block[] {
  const found = known.get(page);
  if (found) return found;
  const made =
    page === 'glossary' ? glossaryBlocks() : page === 'lessons' ? lessonList() : parseMarkdown(texts.get(page) ?? '');
  known.set(page, made);
  return made;
}

/** Where a link of a page leads in the reader; undefined: to what is not in it. */
export function placeOf(from: PageId, href: string): ReadPlace | undefined {
  if (/^[a-z]+:/i.test(href)) return undefined;
  const { pathname, hash } = new URL(href, `https://pages/${pathOf(from)}`);
  const page = ['lessons', 'glossary', ...texts.keys()].find((id) => `/${pathOf(id)}` === pathname);
  return page === undefined ? undefined : { page, ...(hash ? { at: slugOf(decodeURIComponent(hash)) } : {}) };
}

export const titleOf = (page: PageId): string => {
  const [first] = blocksOf(page);
  return first?.kind === 'heading' ? first.text : '';
};

/** The lessons as their list has them, each with whom it is for. */
function listLessons(): { page: PageId; reader: string }[] {
  let reader = '';
  const out: { page: PageId; reader: string }[] = [];
  for (const block of blocksOf('lessons'))
    if (block.kind === 'heading') reader = block.text;
    else if (block.kind === 'table')
      for (const one of block.rows.flat(2)) {
        const page = one.kind === 'link' ? placeOf('lessons', one.href)?.page : undefined;
        if (page !== undefined) out.push({ page, reader });
      }
  return out;
}

/** What Find looks through: lessons by their titles, and each word of the glossary. */
export function listFound(): FoundPage[] {
  const lessonPages = listLessons().map(({ page, reader }) => ({
    title: t.lesson(titleOf(page)),
    words: [...t.lessonWords, reader],
    group: 'lesson' as const,
    place: { page },
  }));
  const words = new Map<string, FoundPage>();
  const add = (title: string, at: string): void => {
    words.set(at, { title: t.word(title), words: [title], group: 'term', place: { page: 'glossary', at } });
  };
  for (const block of blocksOf('glossary')) {
    if (block.kind === 'heading' && block.level === 3) add(block.text, block.slug);
    if (block.kind === 'table')
      for (const [term] of block.rows) {
        const title = textOf(term);
        if (!words.has(slugOf(title))) add(title, slugOf(title));
      }
  }
  return [...lessonPages, ...words.values()];
}
