// Keeps the page's own files, so that it opens without a connection. What is entered is kept by the page itself, not here.
const STORE = "mastwright-outdoors-1";
const FILES = ["./", "page.css", "page.js", "steps.js", "draw.js", "keep.js", "screens.js", "app.webmanifest"];
const PATIENCE = 2500;

self.addEventListener("install", e => e.waitUntil(
  caches.open(STORE).then(store => store.addAll(FILES)).then(() => self.skipWaiting()),
));

self.addEventListener("activate", e => e.waitUntil(
  caches.keys().then(names => Promise.all(names.filter(n => n !== STORE).map(n => caches.delete(n)))).then(() => self.clients.claim()),
));

// The newest page when the workbench answers soon, else the one kept here. A refusal (the key has changed) counts as no answer.
const answer = async request => {
  const store = await caches.open(STORE);
  try {
    const fresh = await fetch(request, { signal: AbortSignal.timeout(PATIENCE), cache: "no-cache" });
    if (fresh.ok) {
      await store.put(request, fresh.clone());
      return fresh;
    }
    return (await store.match(request, { ignoreSearch: true })) ?? fresh;
  } catch {
    return (await store.match(request, { ignoreSearch: true })) ?? Response.error();
  }
};

self.addEventListener("fetch", e => {
  const url = new URL(e.request.url);
  if (e.request.method === "GET" && url.origin === self.location.origin && url.pathname.startsWith(new URL(self.registration.scope).pathname)) {
    e.respondWith(answer(e.request));
  }
});
