/** Holds a name for as long as the page lives, so that a duplicated tab finds it held; always free where there are no locks. */

const PREFIX = 'shapeflight.tab.';
/** A page that reloads may meet the lock of the one that is just going, ms. */
const GOING = 400;

export const hasLocks = (): boolean => globalThis.navigator?.locks !== undefined;

export async function claimName(name: string): Promise<boolean> {
  const locks = globalThis.navigator?.locks;
  if (!locks) return true;
  if (await ask(locks, name, { ifAvailable: true })) return true;
  if (!isReload()) return false;
  return ask(locks, name, { signal: AbortSignal.timeout(GOING) });
}

function ask(locks: LockManager, name: string, options: LockOptions): Promise<boolean> {
  return new Promise((resolve) => {
    locks
      .request(PREFIX + name, options, (lock) => {
        resolve(lock !== null);
        // held until the page is gone
        return lock ? new Promise<void>(() => undefined) : undefined;
      })
      .catch(() => resolve(false));
  });
}

function isReload(): boolean {
  const [entry] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
  return entry?.type === 'reload' || entry?.type === 'back_forward';
}

/** A name that no other page makes. */
export function newName(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('');
}
