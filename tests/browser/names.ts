/** What a screen reader says of the controls: those without a name, and those that it cannot tell apart. */
import type { Page } from '@playwright/test';

const CONTROLS = [
  ...['button', 'slider', 'spinbutton', 'textbox', 'searchbox', 'combobox'],
  ...['checkbox', 'radio', 'tab', 'option', 'link', 'switch', 'listbox'],
];
/** One of these is where it is heard: two alike in it are one too many. */
const PLACES = [
  ...['group', 'region', 'row', 'list', 'listitem', 'dialog', 'navigation', 'tabpanel', 'tablist', 'toolbar', 'table'],
  ...['banner', 'main', 'contentinfo', 'heading', 'paragraph', 'figure', 'combobox', 'listbox', 'radiogroup', 'form'],
];
/** A value is set by these: each has a name of its own in the nearest place that has one. */
const SETS: readonly string[] = ['slider', 'spinbutton'];

/** The page's own tree for screen readers, line by line: `- role "name": value`, indented by what it is in. */
export async function findNameFaults(page: Page): Promise<string[]> {
  return nameFaults(await page.locator('body').ariaSnapshot());
}

export function nameFaults(tree: string): string[] {
  const faults: string[] = [];
  const places: { indent: number; id: number; name: string; words: string }[] = [];
  const heard = new Map<string, string>();
  tree.split('\n').forEach((line, id) => {
    const { 1: indent, 2: role, 3: name } = /^( *)- '?([a-z]+)(?: "((?:[^"\\]|\\.)*)")?/.exec(line) ?? [];
    if (role === undefined) return;
    while ((places.at(-1)?.indent ?? -1) >= indent.length) places.pop();
    const place = places.at(-1);
    if (CONTROLS.includes(role)) {
      const where = place ? ` in ${place.words}` : '';
      if (!name) faults.push(`${role} without a name${where}: ${line.trim()}`);
      const own = SETS.includes(role) ? places.findLast((one) => one.name !== '') : place;
      const key = `${role} "${name}" ${own?.id}`;
      if (name && heard.has(key)) faults.push(`two of ${role} "${name}"${where}`);
      heard.set(key, where);
    }
    if (PLACES.includes(role))
      places.push({ indent: indent.length, id, name: name ?? '', words: `${role} "${name ?? ''}"` });
  });
  return [...new Set(faults)];
}
