/** One worker of the page's pool. It fetches the climate tables itself, so that no order has to carry them. */
import "../noEval.ts";
import { climateOf } from "../../engine/answers/climateOf.ts";
import type { WeatherFile } from "../../engine/place/weatherFile.ts";
import { serveTasks } from "../../engine/pool/task.ts";
import { kindOfTask } from "../../engine/pool/taskKinds.ts";
import type { TaskOrder, TaskReply } from "../../engine/pool/taskOrder.ts";

const turn = new MessageChannel();
const waiting: (() => void)[] = [];
turn.port1.onmessage = () => waiting.shift()?.();

/** Comes back once the messages that wait have been taken; a timer would wait longer than the work between two takes. */
function pause(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve);
    turn.port2.postMessage(null);
  });
}

/** A weather file that comes again is the one that is here: what was prepared with it is kept by it. */
let weather: { readonly text: string; readonly file: WeatherFile } | null = null;
function known(file: WeatherFile): WeatherFile {
  const text = JSON.stringify(file);
  if (weather?.text !== text) weather = { text, file };
  return weather.file;
}

/** What all workers together may keep of members drawn before: the four of the bench with 1,000 members take 33 MB. */
const KEPT_BYTES = 160_000_000;
const keptBytes = KEPT_BYTES / Math.max(1, navigator.hardwareConcurrency || 1);
const say = (reply: TaskReply) => line!.postMessage(reply);
const take = serveTasks(say, pause, keptBytes);

async function begin(order: Extract<TaskOrder, { kind: "run" }>): Promise<void> {
  const { task } = order;
  try {
    const kind = await kindOfTask(task);
    const scenarios = kind.scenarios(task);
    // None for a document that cannot be read, which the task will say.
    const climate = scenarios.length > 0 ? await climateOf(scenarios, kind.varies(task)) : undefined;
    const { weatherFile } = task.surroundings;
    const surroundings = {
      ...(climate === undefined ? {} : { climate }),
      ...(weatherFile === undefined ? {} : { weatherFile: known(weatherFile) }),
    };
    take({ ...order, task: { ...task, surroundings } });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const end = { kind: "fault", sentence: `the climate tables could not be fetched: ${why}` } as const;
    say({ kind: "end", number: order.number, end });
  }
}

/** The line to the desk; the page that starts this worker hands it over. */
let line: MessagePort | null = null;

// Orders wait for those before them, so that a cancel never overtakes what it cancels.
let queue = Promise.resolve();
self.onmessage = ({ ports: [port] }: MessageEvent) => {
  line = port!;
  line.onmessage = ({ data }: MessageEvent<TaskOrder>) => {
    queue = queue.then(() => (data.kind === "cancel" ? take(data) : begin(data)));
  };
};
