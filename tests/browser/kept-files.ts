// The test of all specs: a reused context (playwright.config.ts) that keeps the files it has read and the code compiled from them.
import { test as base } from '@playwright/test';

/** What Playwright has behind a context in this process; where a later version has it elsewhere, the reset is its own again, and slower. */
interface WithServerSide {
  readonly _connection?: { toImpl?(one: object): { setStorageState?: () => Promise<void> } | undefined };
}

const STORED =
  'cookies,local_storage,indexeddb,cache_storage,service_workers,file_systems,shared_storage,storage_buckets,websql';

export const test = base.extend({
  context: async ({ context, baseURL }, use) => {
    // all else of the reset is Playwright's: other pages, routes, start scripts, clock, media. Its way to clear what is stored empties the
    // cache of files too, and visits a page for it that the files in memory do not outlive
    const serverSide = (context as unknown as WithServerSide)._connection?.toImpl?.(context);
    if (serverSide?.setStorageState) serverSide.setStorageState = () => Promise.resolve();
    // after a crash there is none; the test takes it
    const page = context.pages()[0] ?? (await context.newPage());
    if (baseURL) {
      const devtools = await context.newCDPSession(page);
      await devtools.send('Storage.clearDataForOrigin', { origin: new URL(baseURL).origin, storageTypes: STORED });
      await devtools.detach();
    }
    await use(context);
  },
});
