/** Files in and out through the browser. */
import { texts } from './words.ts';

export const fileName = texts.files.fileName;

export function pickFile(read: (name: string, text: string) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) void file.text().then((text) => read(file.name, text));
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
