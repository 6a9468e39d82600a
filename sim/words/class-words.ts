/** What is said of a class's answers, the same for shell and page. */
import type { GuessName } from '../worksheet/guess.ts';

/** With its question mark: it is a guess. */
export const wordGuess = (name: GuessName): string => `${name}?`;

const MEANS: Readonly<Record<GuessName, string>> = {
  'whole time': 'whole air time taken where half was meant',
  feet: 'feet under a heading of metres',
  pounds: 'pounds under a heading of kilograms',
  'half time': 'the way up alone, or the way down',
  'one turn': 'one turn counted where there are two',
  degrees: 'degrees where radians were meant',
  radians: 'radians where whole turns were asked for',
};
const RATIOS: Readonly<Record<GuessName, string>> = {
  'whole time': '4 times',
  feet: '3.3 times',
  pounds: '2.2 times',
  'half time': 'half',
  'one turn': 'half',
  degrees: '57 times',
  radians: '6.3 times',
};

/** "4 gave 4 times the value: whole air time taken where half was meant?" */
export const wordGuesses = (count: number, name: GuessName): string =>
  `${count} gave ${RATIOS[name]} the value: ${MEANS[name]}?`;

/** "0.78 times", as a note beside an answer that is off: two decimals, so that 1.13 does not read as a tenth. */
export const wordTimes = (ratio: number): string => {
  const size = Math.abs(ratio);
  return `${size >= 10 || size < 0.1 ? ratio.toPrecision(size >= 10 ? 3 : 2) : ratio.toFixed(2)} times`;
};
