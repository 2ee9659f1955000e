/**
 * The service worker: puts the whole explorer by on the first visit and serves it from there afterwards, network or not. A newer
 * version is put by beside the one in use and waits until somebody on the page asks for it.
 */
interface Installing extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}
/** What a service worker sees of its world; the types of the page's own world have no name for it. */
interface OfflineScope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", listener: (event: Installing) => void): void;
  addEventListener(type: "message", listener: (event: MessageEvent) => void): void;
  addEventListener(type: "fetch", listener: (event: Fetching) => void): void;
}
const worker = globalThis as unknown as OfflineScope;

/** Written in by `precacheFiles` when the page is built. */
declare const PRECACHED: { readonly version: string; readonly files: readonly string[] };
const { version, files } = PRECACHED;

/** A host may carry this page under several addresses, each in its own version: what one has put by is nothing to another. */
const PREFIX = `duskline ${new URL(worker.registration.scope).pathname} `;
const CACHE = `${PREFIX}${version}`;
const PAGE = "index.html";
const inScope = (file: string) => new URL(file, worker.registration.scope).href;

/** A file whose name carries its content's hash is the same wherever it was put by before. */
async function fetched(file: string): Promise<Response> {
  const url = inScope(file);
  const before = file.startsWith("assets/") ? await caches.match(url) : undefined;
  if (before !== undefined) return before;
  const response = await fetch(url, { cache: "no-cache" });
  if (!response.ok) throw new Error(`${file} cannot be put by: the server says ${response.status}.`);
  return response;
}

async function install(): Promise<void> {
  const cache = await caches.open(CACHE);
  for (const file of files) await cache.put(inScope(file), await fetched(file));
}

/** The version before this one stays for tabs that are still on it; what is older goes. */
async function tidy(): Promise<void> {
  const older = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const { pathname } = new URL(request.url);
  const { pathname: scope } = new URL(worker.registration.scope);
  const isPage = request.mode === "navigate" && (pathname === scope || pathname === `${scope}${PAGE}`);
  const cache = await caches.open(CACHE);
  const kept = isPage
    ? await cache.match(inScope(PAGE))
    : ((await cache.match(request, { ignoreVary: true })) ?? (await caches.match(request, { ignoreVary: true })));
  return kept ?? fetch(request);
}

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(tidy()));
worker.addEventListener("message", (event) => {
  if (event.data === "take-over") void worker.skipWaiting();
});
worker.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(worker.registration.scope)) event.respondWith(answer(event.request));
});

export {};
