/** Asks the browser to keep the built app for use without a network, and tells of a newer version that waits. */

/** ms between two looks for a newer version, while the page is in use */
const LOOK_MS = 3_600_000;

const versionOfPage = (): string | undefined =>
  document.querySelector<HTMLMetaElement>('meta[name="version"]')?.content;

function askVersion(worker: ServiceWorker): Promise<unknown> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage('version', [port2]);
  });
}

/** `offer` is handed what takes the newer version; nothing changes before that is called. */
async function tellOf(worker: ServiceWorker, offer: (take: () => void) => void): Promise<void> {
  const take = (): void => worker.postMessage('take over');
  // a page that came from the server is that version already
  if ((await askVersion(worker)) === versionOfPage()) take();
  else
    offer(() => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      take();
    });
}

export async function keepOffline(offer: (take: () => void) => void): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  // a browser that refuses (private window, plain http) costs nothing but the offline use
  const registration = await navigator.serviceWorker.register('./service-worker.js').catch(() => undefined);
  if (!registration) return;
  if (registration.waiting) void tellOf(registration.waiting, offer);
  registration.addEventListener('updatefound', () => {
    const { installing } = registration;
    installing?.addEventListener('statechange', () => {
      // the first of all versions takes over by itself
      if (installing.state === 'installed' && registration.active) void tellOf(installing, offer);
    });
  });
  let looked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden' || Date.now() - looked < LOOK_MS) return;
    looked = Date.now();
    registration.update().catch(() => undefined);
  });
}
