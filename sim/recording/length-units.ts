/** Units of length as files name them. */
const METRES: ReadonlyMap<string, number> = new Map([
  ['m', 1],
  ['meter', 1],
  ['meters', 1],
  ['metre', 1],
  ['metres', 1],
  ['dm', 0.1],
  ['cm', 0.01],
  ['centimeter', 0.01],
  ['centimeters', 0.01],
  ['centimetre', 0.01],
  ['centimetres', 0.01],
  ['mm', 0.001],
  ['millimeter', 0.001],
  ['millimeters', 0.001],
  ['millimetre', 0.001],
  ['millimetres', 0.001],
  ['in', 0.0254],
  ['inch', 0.0254],
  ['inches', 0.0254],
  ['ft', 0.3048],
]);

/** Metres in a unit; undefined where it is none of length. */
export const metresOf = (unit: string): number | undefined => METRES.get(unit.trim().toLowerCase());
