/** Files in and out through the browser. */
import { texts } from '../texts.ts';

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

export function saveText(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  URL.revokeObjectURL(url);
}
