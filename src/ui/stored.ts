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

/** The same for this tab alone: a reload finds it, another tab does not. */
export function readTab(key: string): string | null {
  try {
    return sessionStorage.getItem(key);
  } catch {
    return null;
  }
}

export function writeTab(key: string, value: string | null): void {
  try {
    if (value === null) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, value);
  } catch {
    // not stored
  }
}

/** While the room of a class is open: the sheet that is answered in it, or nothing. */
export const CLASS_KEY = 'shapeflight.class';
