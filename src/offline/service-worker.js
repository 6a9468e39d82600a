// Keeps the built files so that the app opens without a network: in a gym, on a plane. The build fills in the names and
// the version (offline-plugin.ts). The page itself is asked of the server first; where that hangs, cannot be reached or
// answers with an error, the kept one is given. Files under assets/ carry their digest in the name and never change.
const version = '__VERSION__';
/** by address: the first letters of the digest of what the build made; the page itself is known by the version it names */
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
  // a page of the first visit is under no worker's care: what it loads late is to be of its own version
  event.waitUntil(Promise.all([removeOld(), self.clients.claim()]));
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
  if (event.data === 'look after') event.waitUntil(keepMissing().catch(() => undefined));
});

const ownNames = async () => (await caches.keys()).filter((name) => name.startsWith(prefix));

const addressOf = (name) => new URL(name, self.registration.scope).href;
// a part that failed once is asked for again under another address
const nameOf = (url) => `./${url.replace(/[?#].*/, '').slice(self.registration.scope.length)}`;

// of its own version first: a newer one may be half fetched
async function findKept(url) {
  const isOwn = (name) => Number(name === prefix + version);
  for (const name of (await ownNames()).reverse().sort((a, b) => isOwn(b) - isOwn(a))) {
    const cache = await caches.open(name);
    const kept = await cache.match(url, { ignoreSearch: url.includes('/assets/') });
    const whole = kept && (await takeWhole(kept, nameOf(url), isOwn(name)));
    if (whole) return whole;
    if (kept) await cache.delete(url, { ignoreSearch: true });
  }
  return undefined;
}

// a browser may have lost the end of what it kept, and a network that asks for a password first answers everything with a page of its own
async function takeWhole(answer, name, isOwn) {
  const digest = isOwn || name.startsWith('./assets/') ? files[name] : undefined;
  if (digest === undefined) return answer;
  const bytes = await answer.arrayBuffer();
  if (!(digest === '' ? isThisVersion(bytes) : (await digestOf(bytes)) === digest)) return undefined;
  const headers = new Headers(answer.headers);
  // of what came, not of what was in it
  for (const one of ['content-encoding', 'content-length']) headers.delete(one);
  return new Response(bytes, { headers });
}

const isThisVersion = (bytes) => new TextDecoder().decode(bytes).includes(version);

async function digestOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest.slice(0, 6), (one) => one.toString(16).padStart(2, '0')).join('');
}

async function keepAll() {
  try {
    await keepEach(await caches.open(prefix + version), Object.keys(files));
  } catch (error) {
    // half of it would be taken for a version
    await caches.delete(prefix + version);
    throw error;
  }
}

const keepEach = (cache, names) => Promise.all(names.map((name) => keepOne(cache, name)));

async function keepOne(cache, name) {
  const url = addressOf(name);
  const kept = name.startsWith('./assets/') ? await findKept(url) : undefined;
  const answer = kept ?? (await fetch(url, { ...fresh, signal: AbortSignal.timeout(FETCHED_WITHIN_MS) }));
  const whole = answer.ok ? await takeWhole(answer, name, true) : undefined;
  if (!whole) throw new Error(`${url}: ${answer.ok ? 'not what was built' : answer.status}`);
  await cache.put(url, whole);
}

// what is gone from what was kept is fetched again, as far as the server still has it
async function keepMissing() {
  const cache = await caches.open(prefix + version);
  const there = new Set((await cache.keys()).map(({ url }) => nameOf(url)));
  await Promise.allSettled(
    Object.keys(files)
      .filter((name) => !there.has(name))
      .map((name) => keepOne(cache, name)),
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
  const kept = await findKept(addressOf('./')).catch(() => undefined);
  // one that hangs would keep the next from being sent
  if (kept) giveUp.abort();
  return kept ?? (await asked) ?? Response.error();
}

// where the browser's store fails, the network is left
async function answerFile(request) {
  return (await findKept(request.url).catch(() => undefined)) ?? fetch(request);
}

// the last version but one stays: a page still open may load a lazy part of it
async function removeOld() {
  const names = (await ownNames()).filter((name) => name !== prefix + version);
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)));
}
