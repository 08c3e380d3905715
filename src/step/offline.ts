/** What the page is told of its worker. */
interface WorkerNews {
  /** Everything that the page needs is on this device. */
  readonly ready: () => void;
  /** A newer release is here; `take` puts it in place and loads the page anew. */
  readonly newer: (take: () => void) => void;
}

/** Has the worker of this page keep its files, so that it opens without a network; answers at once. */
export function keepOffline({ ready, newer }: WorkerNews): void {
  if (!("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  void serviceWorker.ready.then(ready);
  const offer = (waiting: ServiceWorker): void => newer(() => {
    serviceWorker.addEventListener("controllerchange", () => { location.reload(); }, { once: true });
    waiting.postMessage("take over");
  });
  // Without a network the worker that is there goes on.
  void serviceWorker.register("worker.js", { scope: "./" }).then((registration) => {
    if (registration.waiting !== null) offer(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const { installing } = registration;
      installing?.addEventListener("statechange", () => {
        if (installing.state === "installed" && serviceWorker.controller !== null) offer(installing);
      });
    });
  }, () => undefined);
}
