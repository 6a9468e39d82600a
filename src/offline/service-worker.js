// Keeps the built files so that the app opens without a network: in a gym, on a plane. The build fills in the names and
// the version (offline-plugin.ts). The page itself is asked of the server first; where that hangs, cannot be reached or
// answers with an error, the kept one is given. Files under assets/ carry their digest in the name and never change.
const version = '__VERSION__';
const files = '__FILES__';
// other deployments on this origin keep files of their own, under other scopes
const prefix = `shapeflight ${new URL(self.registration.scope).pathname} `;
const HANGS_MS = 3000;
const FETCHED_WITHIN_MS = 60_000;
// past the browser's own cache, where one answer that hangs holds up all that are asked for after it
const fresh = { cache: 'no-store' };

self.addEventListener('install', (event) => {
  event.waitUntil(keepAll());
});

self.addEventListener('activate', (event) => {
  event.waitUntil(removeOld());
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === 'navigate' && isPage(request) ? answerPage(request) : answerFile(request));
});

// a page asks which version waits, and whether it may take over
self.addEventListener('message', (event) => {
  if (event.data === 'version') event.ports[0]?.postMessage(version);
  if (event.data === 'take over') self.skipWaiting();
});

const ownNames = async () => (await caches.keys()).filter((name) => name.startsWith(prefix));

// of its own version first: a newer one may be half fetched
async function findKept(request, options) {
  const isOwn = (name) => Number(name === prefix + version);
  for (const name of (await ownNames()).reverse().sort((a, b) => isOwn(b) - isOwn(a))) {
    const kept = await (await caches.open(name)).match(request, options);
    if (kept) return kept;
  }
  return undefined;
}

async function keepAll() {
  try {
    await fetchAll(await caches.open(prefix + version));
  } catch (error) {
    // half of it would be taken for a version
    await caches.delete(prefix + version);
    throw error;
  }
}

async function fetchAll(cache) {
  await Promise.all(
    files.map(async (name) => {
      const url = new URL(name, self.location.href).href;
      const kept = name.startsWith('./assets/') ? await findKept(url) : undefined;
      const answer = kept ?? (await fetch(url, { ...fresh, signal: AbortSignal.timeout(FETCHED_WITHIN_MS) }));
      if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
      await cache.put(url, answer);
    }),
  );
}

// the page of this deployment; what else lies under its path is the server's to answer
const isPage = (request) => {
  const scope = new URL(self.registration.scope).pathname;
  return [scope, `${scope}index.html`].includes(new URL(request.url).pathname);
};

async function answerPage(request) {
  const giveUp = new AbortController();
  // by its address: a request to navigate takes no signal
  const asked = fetch(request.url, { ...fresh, signal: giveUp.signal, redirect: 'manual' }).catch(() => undefined);
  const late = new Promise((done) => setTimeout(done, HANGS_MS));
  const answer = await Promise.race([asked, late]);
  if (answer && answer.status < 400) return answer;
  const kept = await findKept(new URL('./', self.registration.scope).href);
  // one that hangs would keep the next from being sent
  if (kept) giveUp.abort();
  return kept ?? (await asked) ?? Response.error();
}

async function answerFile(request) {
  return (await findKept(request)) ?? fetch(request);
}

// the last version but one stays: a page still open may load a lazy part of it
async function removeOld() {
  const names = (await ownNames()).filter((name) => name !== prefix + version);
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)));
}
