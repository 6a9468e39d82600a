// Invented students of a class, answered by the lock's own functions. No chance: what one answers follows from their number.
import {
  formatWorksheet,
  type GivenFile,
  lockAnswer,
  lockTogether,
  nameStudent,
  type Worksheet,
  writeAnswer,
} from '../../sim/index.ts';

export const NAMES = (
  'Wren A.|Ode B.|Pim B.|Tansy C.|Lark D.|Ivo D.|Sorrel E.|Bram F.|Isolde F.|Quill G.|Fern H.|Otis H.|Maeve J.|Rune K.|' +
  'Dilys L.|Caspar L.|Juno M.|Teasel M.|Ned N.|Orla O.|Pax P.|Sable R.|Hollis R.|Vesper S.|Tam T.|Una T.|Basil V.|Merle W.|' +
  'Yarrow W.|Zeb Y.'
).split('|');

export interface Answered {
  readonly name: string;
  /** of each question; undefined: not locked */
  readonly texts: readonly (string | undefined)[];
  readonly minute?: number;
  readonly working?: string;
}

/** A worksheet as that student hands it in. */
export function handIn(worksheet: Worksheet, { name, texts, minute = 40, working }: Answered): Worksheet {
  const at = (i: number): string => `2026-03-02T09:${String(minute + i).padStart(2, '0')}:00+01:00`;
  let now = nameStudent(worksheet, { name, class: '10 blue' });
  for (const [i, text] of texts.entries()) {
    if (text === undefined) continue;
    now = writeAnswer(now, i, { text, ...(working && worksheet.questions[i].kind === 'number' ? { working } : {}) });
    if (worksheet.order !== 'together') now = lockAnswer(now, i, at(i));
  }
  return worksheet.order === 'together' && texts.every(Boolean) ? lockTogether(now, at(0), texts) : now;
}

export const fileOf = (worksheet: Worksheet, name: string): GivenFile => ({
  name: `${name.toLowerCase().replace(/[^a-z]+/g, '-')}.json`,
  text: formatWorksheet(worksheet),
});

const SENTENCES = [
  'It turns slower when long.',
  'It is not tucked at the start and the end.',
  'Two turns are shared by fast and slow.',
  'Mean rate, not the rate in the tuck.',
  'Opening takes time, so the tuck is faster.',
];

/** Thirty for the ready worksheet of the double back somersault; numbers near what its flight gives, and the usual slips. */
export function tuckClass(worksheet: Worksheet): Worksheet[] {
  return NAMES.map((name, k) => {
    const spread = ((k * 7) % 11) - 5;
    const rise = k % 13 === 5 ? '5.1 m' : k % 13 === 8 ? '4.18 m' : `${(1.27 + spread / 100).toFixed(2)} m`;
    const rate =
      k % 12 === 6
        ? undefined
        : k % 3 === 1
          ? '2.7 rev/s'
          : k % 7 === 2
            ? '1.4 rev/s'
            : `${(1.78 + spread / 50).toFixed(2)} rev/s`;
    return handIn(worksheet, {
      name,
      minute: 40 + (k % 12),
      working: '5.2^2 / (2 * 9.81)',
      texts: [
        `${(1.05 + spread / 100).toFixed(2)} s`,
        rise,
        (2.8 + ((k * 5) % 17) / 5).toFixed(1),
        rate,
        rate === undefined ? undefined : SENTENCES[k % SENTENCES.length],
      ],
    });
  });
}
