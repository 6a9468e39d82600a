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
