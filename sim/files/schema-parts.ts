/** Parts that the schemas of files are made of: numbers in ranges, texts, names, lists, each saying what is allowed. */
import * as v from 'valibot';

/** A field with its meaning, as people read it in the published JSON Schema. */
export const say = <const S extends v.GenericSchema>(schema: S, meaning: string) =>
  v.pipe(schema, v.description(meaning));
/** The same for a field that may be left out. */
export const may = <const S extends v.GenericSchema>(schema: S, meaning: string) => v.optional(say(schema, meaning));

/** A number in a range; the message is what is allowed. */
export const within = (low: number, high: number, unit: string) => {
  const allowed = `a number from ${low} to ${high} ${unit}`.trim();
  return v.pipe(v.number(allowed), v.minValue(low, allowed), v.maxValue(high, allowed));
};
export const text = (longest: number) => {
  const allowed = `text of at most ${longest} characters`;
  return v.pipe(v.string(allowed), v.maxLength(longest, allowed));
};
export const name = v.pipe(
  v.string('a name of 1 to 80 characters'),
  v.minLength(1, 'a name of 1 to 80 characters'),
  v.maxLength(80, 'a name of 1 to 80 characters'),
);
/** Names segments, hinges and contacts: they become column names and XML. */
const PLAIN_NAME = 'a name of 1 to 80 letters, digits, _ or -, a letter first';
export const plainName = v.pipe(v.string(PLAIN_NAME), v.regex(/^[A-Za-z][A-Za-z0-9_-]{0,79}$/, PLAIN_NAME));
export const one = <const T extends readonly string[]>(...words: T) => v.picklist(words, `one of ${words.join(', ')}`);
export const triple = (low: number, high: number, unit: string) =>
  v.strictTuple(
    [within(low, high, unit), within(low, high, unit), within(low, high, unit)],
    `three numbers from ${low} to ${high} ${unit}`,
  );
export const pair = (low: number, high: number, unit: string) =>
  v.strictTuple([within(low, high, unit), within(low, high, unit)], `two numbers from ${low} to ${high} ${unit}`);
export const listOf = <const S extends v.GenericSchema>(item: S, most: number) => {
  const allowed = `a list of at most ${most}`;
  return v.pipe(v.array(item, allowed), v.maxLength(most, allowed));
};
/** An angle of a joint. */
export const angle = within(-720, 720, 'deg');
/** Where an editor finds the rules of this file. */
export const schemaLink = may(
  text(500),
  'Address or path of the JSON Schema of this file, for editors; not read here.',
);
