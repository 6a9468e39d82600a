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

/** Where it has taken over already, by another tab, the page has only to be loaded again. */
function takeOver(worker: ServiceWorker): void {
  const load = (): void => {
    if (worker.state === 'activated') location.reload();
  };
  worker.addEventListener('statechange', load);
  load();
  worker.postMessage('take over');
}

/** `offer` is handed what takes the newer version; nothing changes before that is called. */
async function tellOf(worker: ServiceWorker, offer: (take: () => void) => void): Promise<void> {
  // a page that came from the server is that version already
  if ((await askVersion(worker)) === versionOfPage()) worker.postMessage('take over');
  else offer(() => takeOver(worker));
}

/** A part that did not load may be one that the server has no more, since it was given a newer version: then loading the page again is offered. */
async function lookForOther(offer: (take: () => void) => void): Promise<void> {
  // by an address of its own: what is kept for use without a network is not meant
  const answer = await fetch(`./?${Date.now()}`, { cache: 'no-store' }).catch(() => undefined);
  const there = answer?.ok ? /<meta name="version" content="(\w+)"/.exec(await answer.text())?.[1] : undefined;
  if (there && there !== versionOfPage()) offer(() => location.reload());
}

export async function keepOffline(
  offer: (take: () => void) => void,
  onPartFailed: (listener: () => void) => void,
): Promise<void> {
  if (!import.meta.env.PROD) return;
  onPartFailed(() => void lookForOther(offer));
  if (!('serviceWorker' in navigator)) return;
  // a browser that refuses (private window, plain http) costs nothing but the offline use
  const registration = await navigator.serviceWorker.register('./service-worker.js').catch(() => undefined);
  if (!registration) return;
  const watch = (worker: ServiceWorker): void =>
    worker.addEventListener('statechange', () => {
      // the first of all versions takes over by itself
      if (worker.state === 'installed' && registration.active) void tellOf(worker, offer);
    });
  if (registration.waiting) void tellOf(registration.waiting, offer);
  if (registration.installing) watch(registration.installing);
  registration.addEventListener('updatefound', () => {
    if (registration.installing) watch(registration.installing);
  });
  registration.active?.postMessage('look after');
  let looked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden' || Date.now() - looked < LOOK_MS) return;
    looked = Date.now();
    registration.update().catch(() => undefined);
  });
}
