/** Small settings kept in the browser. Where it refuses to store, a setting lasts as long as the page. */
export function readStored(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function writeStored(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // not stored
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
