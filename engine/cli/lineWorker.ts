/** The thread that answers a call, so that the one that hears Ctrl-C is never busy. */
import { parentPort, workerData } from "node:worker_threads";
import { commandLine } from "./commandLine.ts";
import type { LineCall, LineNews } from "./lineNews.ts";

const port = parentPort!;
const tell = (news: LineNews) => port.postMessage(news);
const { args } = workerData as LineCall;

const code = await commandLine(args, {
  print: (text) => tell({ print: text }),
  complain: (sentence) => tell({ complain: sentence }),
  progress: (share) => tell({ progress: share }),
  drafting: (path) => tell({ drafting: path }),
  input: () => {
    tell({ wantsInput: true });
    return process.stdin;
  },
  ask: null,
});
tell({ code });
