/** From a key press to a command. */
import type { Actions } from './actions.ts';
import { type Command, commands } from './table.ts';

interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** "Mod+Shift+Z"; Shift is named with letters, arrows and named keys, not with signs that need it anyway. */
export function nameKey(press: KeyPress): string {
  const key = press.key === ' ' ? 'Space' : press.key.length === 1 ? press.key.toUpperCase() : press.key;
  const named = key.length > 1 || /[A-Z]/.test(key);
  const parts = [
    press.ctrlKey || press.metaKey ? 'Mod' : '',
    press.altKey ? 'Alt' : '',
    press.shiftKey && named ? 'Shift' : '',
  ];
  return [...parts.filter(Boolean), key].join('+');
}

export function findByKey(press: KeyPress): Command | undefined {
  const name = nameKey(press);
  return commands.find((c) => c.keys.includes(name));
}

/** Runs the command of the key; true when the page should not act on it too. */
export function runKey(press: KeyPress, bench: Actions): boolean {
  const command = findByKey(press);
  if (!command || (command.when && !command.when(bench))) return false;
  command.run(bench);
  return true;
}

const SIGNS: Record<string, string> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  PageUp: 'Page up',
  PageDown: 'Page down',
  Mod: 'Ctrl',
};

/** The key as it is printed. */
export const printKey = (name: string, mac: boolean): string[] =>
  name.split('+').map((part) => (part === 'Mod' && mac ? '⌘' : (SIGNS[part] ?? part)));
