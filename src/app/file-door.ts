/** Files in and out through the browser. */
import { faultTexts } from './say/fault-texts.ts';
import { texts } from './words.ts';

export const fileName = texts.files.fileName;

/** Byte for byte: a mark of the byte order stays in it. A file that is not UTF-8, as JSON has to be, or that cannot be read is an error in words. */
export async function readText(file: Blob): Promise<string> {
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    throw new Error(faultTexts.cannotRead);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Error(faultTexts.noText);
  }
}

/** Of the dialog that is open: an element that nothing holds can be collected before the dialog answers. */
let asked: HTMLInputElement | undefined;

export function pickFile(read: (file: File) => void, accept = '.json,application/json'): void {
  const input = document.createElement('input');
  asked = input;
  input.type = 'file';
  input.accept = accept;
  input.addEventListener('change', () => {
    if (asked === input) asked = undefined;
    const file = input.files?.[0];
    if (file) read(file);
  });
  input.click();
}

export const saveText = (name: string, text: string): void =>
  saveBlob(name, new Blob([text], { type: 'application/json' }));

export function saveBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  URL.revokeObjectURL(url);
}
