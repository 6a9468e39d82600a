/** What is said of a class's answers, the same for shell and page. */
import type { GuessName } from '../worksheet/guess.ts';

/** With its question mark: it is a guess. */
export const wordGuess = (name: GuessName): string => `${name}?`;

const MEANS: Readonly<Record<GuessName, string>> = {
  'whole time': 'the whole air time where half was meant, or a speed twice too large',
  feet: 'feet where metres were asked for',
  pounds: 'pounds where kilograms were asked for',
  'half time': 'the way up alone, or the way down',
  'half the turns': 'half the turns counted',
  degrees: 'degrees where another unit was asked for',
  radians: 'radians where another unit was asked for',
  'whole turns': 'whole turns where another unit was asked for',
};

/** "4 of them: feet where metres were asked for?" */
export const wordGuesses = (count: number, name: GuessName): string => `${count} of them: ${MEANS[name]}?`;

/** "0.78 times", as a note beside an answer that is off: two decimals, so that 1.13 does not read as a tenth. */
export const wordTimes = (ratio: number): string => {
  const size = Math.abs(ratio);
  return `${size >= 10 || size < 0.1 ? ratio.toPrecision(size >= 10 ? 3 : 2) : ratio.toFixed(2)} times`;
};
