/** Files in and out through the browser. */
import { texts } from './words.ts';

export interface FileFault {
  readonly name: string;
  readonly reason: string;
  /** what it begins with; left out: that it was not opened */
  readonly said?: string;
  /** what is true besides; left out: that nothing was changed */
  readonly kept?: string;
}

/** What became of a file that was to be opened. */
export type OpeningEnd = 'taken' | 'cancelled' | FileFault;

export const fileName = texts.files.fileName;

/** Of the dialog that is open: an element that nothing holds can be collected before the dialog answers. */
let asked: HTMLInputElement | undefined;

export const pickFile = (read: (file: File) => void, accept?: string): void =>
  pickFiles(([file]) => read(file), accept, false);

export function pickFiles(
  read: (files: readonly File[]) => void,
  accept = '.json,application/json,.txt,text/plain',
  isMany = true,
): void {
  const input = document.createElement('input');
  asked = input;
  input.type = 'file';
  input.accept = accept;
  input.multiple = isMany;
  input.addEventListener('change', () => {
    if (asked === input) asked = undefined;
    const files = [...(input.files ?? [])];
    if (files.length > 0) read(files);
  });
  input.click();
}

export const saveText = (name: string, text: string): void =>
  saveBlob(name, new Blob([text], { type: 'application/json' }));

/** Names that a system keeps for devices, with any ending. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(?=\.|$)/i;
const LONGEST = 120;

/** A name that every file system takes, whatever the title it is made from. */
export function safeName(name: string): string {
  const [, stem, ending] = /^(.*?)((?:\.[a-z0-9]{1,8}){0,2})$/s.exec(name) ?? ['', name, ''];
  const plain = stem
    .replace(/[\p{C}\p{Zl}\p{Zp}<>:"/\\|?*]+/gu, '-')
    .slice(0, LONGEST)
    .replace(/[\ud800-\udbff]$/, '')
    .replace(/^[\s.-]+|[\s.]+$/g, '');
  return `${(plain || 'shapeflight').replace(DEVICE, '$1-')}${ending}`;
}

export function saveBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = safeName(name);
  link.click();
  URL.revokeObjectURL(url);
}
