import { createSignal } from "solid-js";

/** The part of a registration's and a worker's life that the page follows. */
export interface Offline {
  /** Whether the page opens without a network from now on. */
  isReady(): boolean;
  /** Whether a newer version is put by and waits to be asked for. */
  isNewer(): boolean;
  /** Starts the newer version; the page is loaded again with it. */
  takeNewer(): void;
}

/**
 * Puts the explorer by for days without a network. A browser that cannot, or may not, works on as it is.
 * @param workers the browser's service workers; undefined where there are none, as over plain http
 * @param file the worker's address
 */
export function makeOffline(
  workers: ServiceWorkerContainer | undefined,
  file: string | URL,
  reload: () => void = () => location.reload(),
): Offline {
  const [isReady, setReady] = createSignal(workers?.controller != null);
  const [waiting, setWaiting] = createSignal<ServiceWorker | null>(null);
  let isTaking = false;

  function follow(registration: ServiceWorkerRegistration): void {
    const look = () => {
      if (registration.active !== null) setReady(true);
      // Without one in use before it, a worker is the first and waits for nobody.
      setWaiting(registration.active !== null ? registration.waiting : null);
    };
    const watch = (worker: ServiceWorker | null) => worker?.addEventListener("statechange", look);
    watch(registration.installing);
    watch(registration.waiting);
    registration.addEventListener("updatefound", () => watch(registration.installing));
    look();
  }

  if (workers !== undefined) {
    workers.addEventListener("controllerchange", () => {
      setReady(true);
      if (isTaking) reload();
    });
    workers.register(file).then(follow, () => {
      // A private window or a setting forbids it: the page needs the network then, as any page does.
    });
  }
  return {
    isReady,
    isNewer: () => waiting() !== null,
    takeNewer() {
      isTaking = true;
      waiting()?.postMessage("take-over");
    },
  };
}
