/** Light, dark, or as the system: kept in the browser, set on the root element. */
import { readStored, writeStored } from './stored.ts';

export type Theme = 'system' | 'light' | 'dark';
const KEY = 'shapeflight.theme';

/** Sets the theme, or the one kept when none is named; gives what was set. */
export function setTheme(name?: Theme): Theme {
  const kept = readStored(KEY);
  const chosen = name ?? (kept === 'light' || kept === 'dark' ? kept : 'system');
  if (name) writeStored(KEY, name);
  if (chosen === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = chosen;
  for (const notify of listeners) notify();
  return chosen;
}

const listeners = new Set<() => void>();

/** Calls back after every change of colours, wherever it came from; returns the way to stop. */
export function watchTheme(notify: () => void): () => void {
  const queries = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'].map((q) => matchMedia(q));
  for (const q of queries) q.addEventListener('change', notify);
  listeners.add(notify);
  return () => {
    for (const q of queries) q.removeEventListener('change', notify);
    listeners.delete(notify);
  };
}
