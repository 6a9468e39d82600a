/** Small settings kept in the browser. Where it refuses to store, a setting lasts as long as the page. */
export function readStored(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** False: the browser refused. */
export function writeStored(key: string, value: string): boolean {
  try {
    localStorage.setItem(key, value);
    return true;
  } catch {
    return false;
  }
}

/** Of what is stored under names that begin so, the last written stay; each says its time in a field `savedAt`. */
export function dropOldest(prefix: string, most: number): void {
  try {
    const names = Object.keys(localStorage).filter((name) => name.startsWith(prefix));
    const timeOf = (name: string): number => Number(/"savedAt":(\d+)/.exec(localStorage.getItem(name) ?? '')?.[1] ?? 0);
    const old = names.sort((a, b) => timeOf(b) - timeOf(a)).slice(most);
    for (const name of old) localStorage.removeItem(name);
  } catch {
    // they stay
  }
}

/** While the room of a class is open: the sheet that is answered in it, or nothing. Of this tab alone. */
const CLASS_KEY = 'shapeflight.class';

/** What a reload of this tab comes back to; null: the room was not open, or the page was opened by its address, perhaps by somebody else. */
export function readClassTab(): string | null {
  try {
    const [how] = performance.getEntriesByType('navigation');
    const isSame = how && 'type' in how && (how.type === 'reload' || how.type === 'back_forward');
    if (isSame) return sessionStorage.getItem(CLASS_KEY);
    // the bench was opened: that is what a reload comes back to
    sessionStorage.removeItem(CLASS_KEY);
    return null;
  } catch {
    return null;
  }
}

export function writeClassTab(value: string | null): void {
  try {
    if (value === null) sessionStorage.removeItem(CLASS_KEY);
    else sessionStorage.setItem(CLASS_KEY, value);
  } catch {
    // not stored
  }
}
