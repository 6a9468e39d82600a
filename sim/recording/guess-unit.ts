/** The unit of length of a file that does not say it, from how large the body in it is. */

/** metres in usual units: m, cm, mm, inches, feet, and the 0.45-inch unit of skeletons from old optical studios (1 / 0.45 inches; from memory) */
const USUAL = [1, 0.01, 0.001, 0.0254, 0.3048, 0.0254 / 0.45];
const NAMES = ['metres', 'centimetres', 'millimetres', 'inches', 'feet', 'units of 56.4 mm'];
/** A body in the right unit is within this factor of the athlete's size. */
const NEAR = 1.35;

interface LengthUnit {
  readonly unitM: number;
  readonly note: string;
}

/** `size` in the file's unit against `sizeM` of the athlete. */
export function guessUnit(size: number, sizeM: number): LengthUnit {
  const off = (unit: number): number => Math.abs(Math.log((unit * size) / sizeM));
  const best = USUAL.reduce((a, b, i) => (off(b) < off(USUAL[a]) ? i : a), 0);
  if (off(USUAL[best]) < Math.log(NEAR))
    return {
      unitM: USUAL[best],
      note: `The file does not say its unit of length; by the size of the body it is ${NAMES[best]}.`,
    };
  return {
    unitM: sizeM / size,
    note: 'The file does not say its unit of length, and no usual one fits: it is scaled to the athlete. State the unit where it is known.',
  };
}
