/** The desk's own thread: hands what the page wants to the pool and puts the parts together, so that the page never waits. */
import "../noEval.ts";
import { makeSurroundings } from "../../engine/answers/makeSurroundings.ts";
import { makePagePool } from "../pool/makePagePool.ts";
import type { Orders, Report } from "./desk.ts";
import { makeDeskWork } from "./makeDeskWork.ts";
import { zonedWants } from "./zonedWants.ts";

const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

/** What is said at one time goes as one message. */
let said: Report[] = [];
function tell(report: Report): void {
  if (said.push(report) > 1) return;
  queueMicrotask(() => {
    self.postMessage(said);
    said = [];
  });
}

/** On two cores a first pass is seen later by as much where the second begins at once. */
const FRAME_MS = 16;

const take = makeDeskWork({
  pool: makePagePool(),
  surroundings: makeSurroundings(),
  tell,
  nowMs: () => performance.now(),
  whileItDraws: () => new Promise((resolve) => setTimeout(resolve, FRAME_MS)),
  turn: () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      channel.port2.postMessage(null);
    }),
  makeCancel: () => new AbortController(),
});

// One after the other, so that no order overtakes one that waits for zones.
let line = Promise.resolve();
self.onmessage = ({ data }: MessageEvent<Orders>) => {
  line = line.then(async () => take({ ...data, wants: await zonedWants(data.wants) }));
};
