// Finding commands by words.
import { describe, expect, it } from 'vitest';
import { findRanked, scoreWords } from '../../src/commands/search.ts';

const titles = [
  'Save to a file',
  'Save to the shelf',
  'Print sheet',
  'Open a file',
  'Zoom the large stage in',
  'Bückling',
];
const find = (typed: string): string[] =>
  findRanked(
    titles.map((title) => ({ title })),
    typed,
  ).map(({ item }) => item.title);

describe('finding by words', () => {
  it('words may stand in any order and be begun only', () => {
    expect(find('shelf sa')).toEqual(['Save to the shelf']);
    expect(find('fi')).toEqual(['Open a file', 'Save to a file']);
  });
  it('every word must fit', () => {
    expect(find('save print')).toEqual([]);
    expect(find('save')).toEqual(['Save to a file', 'Save to the shelf']);
  });
  it('letters left out are forgiven within a word or two, and accents are not needed', () => {
    expect(find('prsht')).toEqual(['Print sheet']);
    expect(find('buck')).toEqual(['Bückling']);
  });
  it('nothing typed finds everything, in its order', () => {
    expect(find('  ')).toEqual(titles);
    expect(scoreWords('x', '')).toBeGreaterThan(0);
  });
});
