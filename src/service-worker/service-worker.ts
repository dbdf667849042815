// Keeps the built pages on the device, so that they open with no house in reach. Entries are not its business: they lie
// in the browser's database, which it never touches, so that no change of version can strand them.

/** What the build writes in front of this file: a mark of this version and every file of it, by path from the scope. */
declare const lacbenchBuild: { readonly version: string; readonly files: readonly string[] };
const worker = self as unknown as ServiceWorkerGlobalScope;

const prefix = "lacbench-pages-";
const kept = `${prefix}${lacbenchBuild.version}`;
const files = new Set(lacbenchBuild.files);
const scope = worker.registration.scope;
const urlOf = (path: string): string => new URL(path, scope).href;

/** A name with a hash in it never changes, so what an older version kept of it will do. */
const isHashed = (path: string): boolean => /-[\w-]{8,}\.\w+$/.test(path);

async function keep(cache: Cache, path: string): Promise<void> {
  const url = urlOf(path);
  const old = isHashed(path) ? await caches.match(url) : undefined;
  const answer = old ?? (await fetch(url, { cache: isHashed(path) ? "default" : "reload" }));
  if (!answer.ok) throw new Error(`${path} was answered with ${answer.status}`);
  await cache.put(url, answer);
}

/** All of a version or nothing: an install that fails leaves the one before in its place. */
async function install(): Promise<void> {
  const cache = await caches.open(kept);
  await Promise.all([...files].map((path) => keep(cache, path)));
}

/** The version before stays beside this one: a page that is still open may ask for its parts. */
async function dropOlder(): Promise<void> {
  const names = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== kept);
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/** The file that answers, by path from the scope; undefined for what only the house can answer. */
function fileFor(request: Request): string | undefined {
  const url = new URL(request.url);
  if (request.method !== "GET" || !url.href.startsWith(scope)) return undefined;
  const path = url.pathname.slice(new URL(scope).pathname.length);
  if (path.startsWith("api/")) return undefined;
  if (files.has(path) || isHashed(path)) return path;
  return request.mode === "navigate" ? "index.html" : undefined; // a place, whatever a board in it is called
}

/** From what this version keeps; from another version's; else from the house. */
async function answer(path: string, request: Request): Promise<Response> {
  const own = await (await caches.open(kept)).match(urlOf(path));
  return own ?? (await caches.match(urlOf(path))) ?? fetch(request);
}

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(dropOlder()));
worker.addEventListener("message", (event) => {
  if (event.data === "take-over") void worker.skipWaiting();
});
worker.addEventListener("fetch", (event) => {
  const path = fileFor(event.request);
  if (path !== undefined) event.respondWith(answer(path, event.request));
});
worker.addEventListener("notificationclick", (event) => {
  event.notification.close();
  event.waitUntil(showBench());
});

/** The page that is open comes to the front; without one the bench opens. */
async function showBench(): Promise<void> {
  const [open] = await worker.clients.matchAll({ type: "window" });
  if (open === undefined) await worker.clients.openWindow(urlOf("bench"));
  else await open.focus();
}
