/** Names that every object of JavaScript answers to, and as long ones that none does: a file means the same with either. */
export const objectNames: readonly (readonly [name: string, plain: string])[] = [
  ['constructor', 'konstruktor'],
  ['toString', 'toStrink'],
  ['valueOf', 'valueOg'],
  ['hasOwnProperty', 'hasOwnPropertu'],
  ['isPrototypeOf', 'isPrototypeOg'],
  ['toLocaleString', 'toLocaleStrink'],
  ['propertyIsEnumerable', 'propertyIsEnumerablo'],
  ['prototype', 'prototypo'],
];
