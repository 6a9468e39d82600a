// Worksheets for tests: a ready one, and students who answer it.
import { chains, skills } from '../../presets/index.ts';
import { worksheets } from '../../presets/worksheet-shelf.ts';
import {
  lockAnswer,
  nameStudent,
  parseWorksheet,
  type Worksheet,
  worksheetHead,
  writeAnswer,
} from '../../sim/index.ts';

export function blankWorksheet(id = 'double-back-tuck', more: Partial<Worksheet> = {}): Worksheet {
  const { skill, ...asks } = worksheets[id];
  return parseWorksheet({ ...worksheetHead, ...asks, ...more, skill: skills[skill] ?? chains[skill] });
}

export const clock = (minute: number): string => `2026-03-02T09:${String(minute).padStart(2, '0')}:00+01:00`;

/** Answers in turn, each locked; what is empty stays open, and so does what starts with "open:". */
export function answered(name: string, texts: readonly string[], blank = blankWorksheet()): Worksheet {
  return texts.reduce(
    (sheet, text, i) => {
      if (text === '') return sheet;
      const isOpen = text.startsWith('open:');
      const written = writeAnswer(sheet, i, { text: text.replace('open:', '') });
      return isOpen ? written : lockAnswer(written, i, clock(40 + i));
    },
    nameStudent(blank, { name }),
  );
}
