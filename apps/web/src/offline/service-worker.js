// Keeps the built page. The names of built files carry their content, so they are answered from the shelf; the page itself is
// asked of the server first. `BUILT` and `STAMP` are filled in by the build.
const BUILT = self.__BUILT__;
const SHELF = `handrail-${self.__STAMP__}`;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(SHELF)
      .then((shelf) => shelf.addAll(['/index.html', ...BUILT]))
      .then(() => self.skipWaiting()),
  );
});
self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name !== SHELF).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin || url.pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') {
    event.respondWith(fetch(request).catch(() => caches.match('/index.html')));
    return;
  }
  event.respondWith(caches.match(url.pathname).then((kept) => kept ?? fetch(request)));
});
