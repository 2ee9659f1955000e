/** A thread that answers calls of the built command one after another. Plain JavaScript: a thread of Node has no loader for more. */
import { pathToFileURL } from "node:url";
import { workerData } from "node:worker_threads";

const { bundle, port, done } = workerData;
const { commandLine } = await import(pathToFileURL(bundle).href);
port.on("message", async (args) => {
  const out = [];
  const err = [];
  const code = await commandLine(args, {
    print: (text) => out.push(`${text}\n`),
    complain: (sentence) => err.push(`${sentence}\n`),
    progress: () => {},
    drafting: () => {},
    input: async function* () {},
    ask: null,
  });
  port.postMessage({ code, out: out.join(""), err: err.join("") });
  Atomics.add(done, 0, 1);
  Atomics.notify(done, 0);
});
