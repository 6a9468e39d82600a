// Keeps the built files so that the app opens without a network: in a gym, on a plane. The build fills in the names and
// the version (offline-plugin.ts). The page itself is asked of the server first, so an old one is never shown in its
// place; files under assets/ carry their digest in the name and never change.
const version = '__VERSION__';
const files = '__FILES__';
const prefix = 'shapeflight-';

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(prefix + version).then((cache) => cache.addAll(files)));
  self.skipWaiting();
});

self.addEventListener('activate', (event) => {
  event.waitUntil(removeOld());
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === 'navigate' ? answerPage(request) : answerFile(request));
});

async function answerPage(request) {
  try {
    return await fetch(request);
  } catch (error) {
    const kept = await caches.match(new URL('./', self.registration.scope).href, { ignoreSearch: true });
    if (kept) return kept;
    throw error;
  }
}

async function answerFile(request) {
  return (await caches.match(request)) ?? fetch(request);
}

// the last version but one stays: a page still open may load a lazy part of it
async function removeOld() {
  const names = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== prefix + version);
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)));
}
