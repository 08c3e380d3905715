// The worker of a page: it keeps the files of one build, and of that page alone, so that the page opens without its server. What people type
// stands in the browser's own storage, which no update touches.

/** The page whose files are kept; the build of the site writes it in front of this file. */
declare const pageBuild: {
  readonly page: string;
  /** Name of the build. */
  readonly name: string;
  /** Its files, beside the worker. */
  readonly files: readonly string[];
  /** True where the page of the server comes first, and the one kept only where the server does not answer; else a person takes a newer release. */
  readonly freshFirst: boolean;
};

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
const { freshFirst } = pageBuild;
const prefix = `baywright ${pageBuild.page} `;
const cacheName = prefix + pageBuild.name;
const addresses = new Set(pageBuild.files.map((file) => new URL(file, worker.registration.scope).href));

worker.addEventListener("install", (event) => {
  // A name with a hash in it means one file for good. Any other is asked for past the browser's own store: a file of an older build must not slip in.
  const wanted = [...addresses].map((address) => new Request(address, { cache: /\.[0-9a-f]{10}\.\w+$/.test(address) ? "default" : "reload" }));
  if (freshFirst) void worker.skipWaiting();
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
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  const address = origin + pathname.replace(/\/index\.html$/, "/");
  if (request.method !== "GET" || !addresses.has(address)) return;
  const kept = async (): Promise<Response> => (await (await caches.open(cacheName)).match(address)) ?? fetch(request);
  event.respondWith(freshFirst && request.mode === "navigate" ? fetch(request).catch(kept) : kept());
});
