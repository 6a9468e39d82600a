/** Dive numbers against the examples of World Aquatics, part D. */
import { describe, expect, test } from 'vitest';
import { directionOfDive, entersHeadFirst, formatDiveNumber, parseDiveNumber, wordDive } from '../../sim/index.ts';
import { refusalOf } from './refusal.ts';

// World Aquatics Competition Regulations, part D: number, words, head first, direction of somersault
const PART_D: [string, string, boolean, string][] = [
  ['107B', 'forward 3 1/2 somersaults, pike', true, 'forward'],
  ['305C', 'reverse 2 1/2 somersaults, tuck', true, 'backward'],
  ['5253B', 'back 2 1/2 somersaults with 1 1/2 twists, pike', true, 'backward'],
  ['5371D', 'reverse 3 1/2 somersaults with 1/2 twist, free', true, 'backward'],
  ['612B', 'armstand forward 1 somersault, pike', true, 'forward'],
];
// written by the rule of part D, no example of theirs
const BY_RULE: [string, string, boolean, string][] = [
  ['103B', 'forward 1 1/2 somersaults, pike', true, 'forward'],
  ['201A', 'back dive, straight', true, 'backward'],
  ['402C', 'inward 1 somersault, tuck', false, 'forward'],
  ['113C', 'flying forward 1 1/2 somersaults, tuck', true, 'forward'],
  ['1011C', 'forward 5 1/2 somersaults, tuck', true, 'forward'],
  ['5132D', 'forward 1 1/2 somersaults with 1 twist, free', true, 'forward'],
  ['6243D', 'armstand back 2 somersaults with 1 1/2 twists, free', true, 'backward'],
  ['631A', 'armstand reverse 1/2 somersault, straight', false, 'backward'],
];

describe('dive numbers', () => {
  test.each([...PART_D, ...BY_RULE])('%s is %s', (text, words, headFirst, direction) => {
    const dive = parseDiveNumber(text);
    expect(wordDive(dive)).toBe(words);
    expect(entersHeadFirst(dive)).toBe(headFirst);
    expect(directionOfDive(dive)).toBe(direction);
    expect(formatDiveNumber(dive)).toBe(text);
    expect(parseDiveNumber(` ${text.toLowerCase()} `)).toEqual(dive);
  });

  test.each([
    ['', 'dive'],
    ['B107', 'dive'],
    ['707B', 'dive, group'],
    ['127B', 'dive, second figure'],
    ['107', 'dive, position'],
    ['107E', 'dive, position'],
    ['107D', 'dive, position'],
    ['10B', 'dive'],
    ['100B', 'dive, half somersaults'],
    ['1012C', 'dive, half somersaults'],
    ['1007C', 'dive, half somersaults'],
    ['5550D', 'dive, take-off group'],
    ['5150D', 'dive, half twists'],
    ['642B', 'dive, take-off group'],
    ['515B', 'dive'],
  ])('%j is refused, and the error names %s', (text, field) => {
    expect(refusalOf(() => parseDiveNumber(text)).field).toBe(field);
  });
});
