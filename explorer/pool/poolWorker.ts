/** One worker of the page's pool. It fetches the climate tables itself, once, so that no order has to carry them. */
import "../noEval.ts";
import {
  type ClimateTables,
  loadClimateTables,
  serveTasks,
  type TaskOrder,
  type TaskReply,
  type WeatherFile,
} from "../../engine/index.ts";

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

const take = serveTasks((reply, transfer) => self.postMessage(reply, { transfer }), pause);
const climate = loadClimateTables();

// Orders wait for the tables in the order in which they came, so that a cancel never overtakes what it cancels.
self.onmessage = ({ data }: MessageEvent<TaskOrder>) => {
  const begin = (tables: ClimateTables) => {
    if (data.kind === "cancel") return take(data);
    const { weatherFile } = data.task.surroundings;
    const surroundings = { climate: tables, ...(weatherFile === undefined ? {} : { weatherFile: known(weatherFile) }) };
    take({ ...data, task: { ...data.task, surroundings } });
  };
  const refuse = (error: Error) => {
    const end = { kind: "fault", sentence: `the climate tables could not be fetched: ${error.message}` } as const;
    self.postMessage({ kind: "end", number: data.number, end } satisfies TaskReply);
  };
  climate.then(begin, refuse);
};
