/** A sheet handed in: as a file, or as a link. */
import type { Worksheet } from '../../../sim/index.ts';
import { baseAddress } from '../../app/base-address.ts';
import { saveText } from '../../app/file-door.ts';
import type { Classing } from '../../engine/class.ts';

const LONGEST = 40;

/** "worksheet-wren-a.json": letters and digits of any script, and nothing that a file system has another use for. */
export const sheetFileName = (name: string): string =>
  `worksheet-${
    name
      .normalize('NFC')
      .toLowerCase()
      .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
      .slice(0, LONGEST)
      .replace(/^-+|-+$/g, '') || 'sheet'
  }.json`;

/** Gives the name of the file. */
export function saveSheet(classing: Classing, worksheet: Worksheet): string {
  const file = sheetFileName(worksheet.student?.name ?? '');
  saveText(file, classing.write(worksheet));
  return file;
}

/** With the address of this bench, where others can reach it; else the fragment alone, which is read where a link is pasted. */
export function linkOf(classing: Classing, worksheet: Worksheet): { readonly link: string; readonly isBare: boolean } {
  const base = baseAddress();
  return { link: `${base ?? ''}#${classing.writeLink(worksheet)}`, isBare: base === undefined };
}
