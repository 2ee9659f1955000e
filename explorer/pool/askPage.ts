/** A worker of the pool, as the desk sees it: as much of a Worker as the pool needs. */
export interface PoolWorker {
  onmessage: ((event: MessageEvent) => void) | null;
  /** Called when it is lost. */
  onerror: ((event: { readonly message: string }) => void) | null;
  postMessage(order: unknown): void;
  terminate(): void;
}

/** What a desk says to its page when it wants a worker; with it come the worker's line and the one that says when it is lost. */
export const START_WORKER = "start a worker of the pool";

/**
 * Asks the page to start a worker for its desk. A desk is a worker itself, and in Firefox one that starts another stands still for ever in about
 * one start of ten, without a word: only pages start workers.
 */
export function askPage(): PoolWorker {
  const line = new MessageChannel();
  const loss = new MessageChannel();
  const worker: PoolWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (order) => line.port1.postMessage(order),
    terminate: () => loss.port1.postMessage(null),
  };
  line.port1.onmessage = (event) => worker.onmessage?.(event);
  loss.port1.onmessage = ({ data }: MessageEvent<string>) => worker.onerror?.({ message: data });
  self.postMessage(START_WORKER, { transfer: [line.port2, loss.port2] });
  return worker;
}
