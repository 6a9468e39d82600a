/** JSON for a file or a terminal: what turns the letters of a line round, drives a terminal or is not seen is written as its number, and reads back the same. */
export const jsonText = (value: unknown, indent = 2): string =>
  JSON.stringify(value, null, indent).replace(
    /[\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
