/** One worker of the pool, as Node runs it. */
import { parentPort } from "node:worker_threads";
import { serveTasks } from "../pool/task.ts";

const port = parentPort!;
port.on(
  "message",
  serveTasks(
    (reply) => port.postMessage(reply),
    () => new Promise((resolve) => setImmediate(resolve)),
  ),
);
