/** A dive in words: "inward two and a half, tuck", "back one and a half with a full twist". Where the position is left out, those that are usual. */
import { FieldError } from '../math/field-error.ts';
import { type DiveLetter, type DiveNumber, MOST_HALVES, type TakeoffGroup } from './dive-number.ts';
import { lettersOf } from './loose-code.ts';
import type { NameReading } from './name-reading.ts';

const LETTERS = { straight: 'A', pike: 'B', tuck: 'C' } as const;

export function diveOfName(said: NameReading, text: string): DiveNumber[] {
  const { dive, way, somersaults = dive && dive !== 'armstand' ? 0.5 : 1 } = said;
  const halfSomersaults = 2 * somersaults;
  if (halfSomersaults > MOST_HALVES || Object.keys(said.placed).length > 0)
    throw new FieldError('name', text, `a dive of up to ${MOST_HALVES} half somersaults, its twists counted together`);
  const groups: TakeoffGroup[] =
    dive === 'inward'
      ? [4]
      : dive === 'reverse'
        ? [3]
        : way === 'backward'
          ? [2]
          : way === 'forward' || said.own
            ? [1]
            : [1, 2];
  const halfTwists = said.halves ?? 0;
  const letters: readonly DiveLetter[] = said.shape ? [LETTERS[said.shape]] : lettersOf(halfSomersaults, halfTwists);
  return groups.flatMap((takeoffGroup) =>
    letters.map((letter): DiveNumber => {
      const group = dive === 'armstand' ? 6 : halfTwists > 0 ? 5 : takeoffGroup;
      return { group, takeoffGroup, flying: false, halfSomersaults, halfTwists, letter };
    }),
  );
}
