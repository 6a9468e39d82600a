/** What a file may be in place of a skill in UTF-8, and what is said of it on page and shell alike. */

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));
const sixteen = (text: string, isBig: boolean, mark: boolean): number[] => [
  ...(mark ? (isBig ? [0xfe, 0xff] : [0xff, 0xfe]) : []),
  ...[...text].flatMap((c) => {
    const code = c.charCodeAt(0);
    return isBig ? [code >> 8, code & 255] : [code & 255, code >> 8];
  }),
];
const MARK = [0xef, 0xbb, 0xbf];
const SAVE = 'save it as UTF-8 in a text editor';

export interface FileKind {
  readonly name: string;
  /** of a sound skill's text */
  bytes(skill: string): number[];
  /** undefined: it is read */
  readonly said?: { readonly what: string; readonly todo?: string };
}

const SIXTEEN = { what: 'text in UTF-16', todo: SAVE };
const OLDER = { what: 'text in an older encoding than UTF-8', todo: SAVE };

export const fileKinds: readonly FileKind[] = [
  { name: 'UTF-8', bytes: ascii },
  { name: 'UTF-8 with its mark', bytes: (skill) => [...MARK, ...ascii(skill)] },
  {
    name: 'UTF-8 with its mark twice',
    bytes: (skill) => [...MARK, ...MARK, ...ascii(skill)],
    said: { what: 'text with two marks of the byte order at its beginning', todo: SAVE },
  },
  { name: 'UTF-16, small end first, with its mark', bytes: (skill) => sixteen(skill, false, true), said: SIXTEEN },
  { name: 'UTF-16, big end first, with its mark', bytes: (skill) => sixteen(skill, true, true), said: SIXTEEN },
  { name: 'UTF-16, small end first, bare', bytes: (skill) => sixteen(skill, false, false), said: SIXTEEN },
  { name: 'UTF-16, big end first, bare', bytes: (skill) => sixteen(skill, true, false), said: SIXTEEN },
  {
    name: 'Latin-1',
    bytes: (skill) => ascii(skill.replace('"title": "', '"title": "\u00dcbung ')),
    said: OLDER,
  },
  { name: 'a cut letter at the end', bytes: (skill) => [...ascii(skill), 0xc3], said: OLDER },
  { name: 'letters written too long', bytes: (skill) => [...ascii(skill), 0xc0, 0xaf], said: OLDER },
  { name: 'half a pair of letters', bytes: (skill) => [...ascii(skill), 0xed, 0xa0, 0x80], said: OLDER },
  { name: 'zeros', bytes: () => new Array(100).fill(0), said: { what: 'not text' } },
  {
    name: 'a zero in the text',
    bytes: (skill) => ascii(skill.replace('"title"', '"ti\0le"')),
    said: { what: 'not text' },
  },
  { name: 'a picture', bytes: () => [0x89, ...ascii('PNG'), 0xff, 0xfe, 0, 1], said: { what: 'a picture' } },
  { name: 'a film', bytes: () => [0x1a, 0x45, 0xdf, 0xa3, 0x9f], said: { what: 'a film' } },
  {
    name: 'a packed file',
    bytes: () => [0x50, 0x4b, 3, 4, 0xff],
    said: { what: 'a packed file, or a document of an office program' },
  },
  { name: 'bytes of no kind', bytes: () => [0x7b, 0xff, 0xfe, 0x22, 0x01], said: { what: 'not text' } },
];
