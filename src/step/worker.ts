// The worker of the page: it keeps the files of one build, and of this folder alone, so that the page opens without a network. What people type
// stands in the browser's own storage, which no update touches.

/** Name of the build, and its files beside the worker; the build of the site writes it in front of this file. */
declare const stepBuild: { readonly name: string; readonly files: readonly string[] };

/** What the type library of a page does not know of a worker. */
interface WorkerEvent extends Event {
  readonly request: Request;
  readonly data: unknown;
  waitUntil(work: Promise<unknown>): void;
  respondWith(answer: Promise<Response>): void;
}

interface WorkerScope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate" | "fetch" | "message", listener: (event: WorkerEvent) => void): void;
}

const worker = globalThis as unknown as WorkerScope;
const prefix = "baywright steps ";
const cacheName = prefix + stepBuild.name;
const addresses = new Set(stepBuild.files.map((file) => new URL(file, worker.registration.scope).href));

worker.addEventListener("install", (event) => {
  // Past the browser's own store: a file of an older build under the same name must not slip in.
  const wanted = [...addresses].map((address) => new Request(address, { cache: "reload" }));
  event.waitUntil(caches.open(cacheName).then((cache) => cache.addAll(wanted)));
});

worker.addEventListener("activate", (event) => {
  const isOlder = (name: string): boolean => name.startsWith(prefix) && name !== cacheName;
  event.waitUntil(caches.keys().then((names) => Promise.all(names.filter(isOlder).map((name) => caches.delete(name)))).then(() => worker.clients.claim()));
});

worker.addEventListener("message", ({ data }) => {
  if (data === "take over") void worker.skipWaiting();
});

worker.addEventListener("fetch", (event) => {
  const { href, origin, pathname } = new URL(event.request.url);
  const address = event.request.mode === "navigate" ? (pathname.endsWith("/") || pathname.endsWith("/index.html") ? worker.registration.scope : href) : origin + pathname;
  if (event.request.method !== "GET" || !addresses.has(address)) return;
  event.respondWith(caches.open(cacheName).then(async (cache) => (await cache.match(address)) ?? fetch(event.request)));
});
