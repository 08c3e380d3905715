/** What a page is told of its worker. */
interface WorkerNews {
  /** Everything that the page needs is on this device. */
  readonly ready: () => void;
  /** A newer release is here; `take` puts it in place and loads the page anew. Only of pages whose worker waits for that. */
  readonly newer?: (take: () => void) => void;
}

/** Has the worker beside this page keep its files, so that it opens without its server; answers at once. */
export function keepOffline({ ready, newer }: WorkerNews): void {
  if (!("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  const offer = (waiting: ServiceWorker): void => newer?.(() => {
    serviceWorker.addEventListener("controllerchange", () => { location.reload(); }, { once: true });
    waiting.postMessage("take over");
  });
  // Without a network the worker that is there goes on.
  void serviceWorker.register("worker.js", { scope: "./" }).then((registration) => {
    tellOnceActive(registration, ready);
    if (registration.waiting !== null) offer(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const { installing } = registration;
      installing?.addEventListener("statechange", () => {
        if (installing.state === "installed" && serviceWorker.controller !== null) offer(installing);
      });
    });
  }, () => undefined);
}

/** Tells once a worker of this very page answers for it: what the browser itself calls ready may be that of a page above. */
function tellOnceActive({ active, waiting, installing }: ServiceWorkerRegistration, ready: () => void): void {
  const own = active ?? waiting ?? installing;
  if (own === null) return;
  if (own.state === "activated") {
    ready();
    return;
  }
  const look = (): void => {
    if (own.state !== "activated") return;
    own.removeEventListener("statechange", look);
    ready();
  };
  own.addEventListener("statechange", look);
}
