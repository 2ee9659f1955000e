import { START_WORKER } from "./askPage.ts";

/** Starts the workers that a desk asks its page for. @param desk nobody listens to it yet: what is said here is heard by nobody else */
export function startForDesk(desk: Worker): Worker {
  desk.addEventListener("message", (event) => {
    if (event.data !== START_WORKER) return;
    event.stopImmediatePropagation();
    const [line, loss] = event.ports;
    const worker = new Worker(new URL("./poolWorker.ts", import.meta.url), { type: "module" });
    worker.onerror = ({ message }) => loss!.postMessage(message);
    loss!.onmessage = () => worker.terminate();
    worker.postMessage(null, [line!]);
  });
  return desk;
}
