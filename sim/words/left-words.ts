/** What a flight left, in words: "the floor", "the bed", "the bar". One place for every sentence that speaks of the push or the release. */
import type { Piece } from '../skill/apparatus-piece.ts';

const LEFT_WORDS: Readonly<Partial<Record<Piece['kind'], string>>> = {
  floor: 'the floor',
  mat: 'the mat',
  bed: 'the bed',
  springboard: 'the board',
  divingBoard: 'the board',
  platform: 'the platform',
  table: 'the table',
  rail: 'the bar',
};

/** Undefined where that is not known. */
export const wordLeft = (left: Piece['kind'] | undefined): string | undefined => left && LEFT_WORDS[left];
