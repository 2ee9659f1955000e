/** Works out runs and odds away from the page, so that nothing ever waits for it. */
import "../noEval.ts";
import {
  drivers,
  limits,
  mergeOdds,
  mergeSizes,
  type OddsPart,
  oddsReport,
  type PreparedEnsemble,
  prepareEnsemble,
  prepareSizes,
  readScenario,
  runMembers,
  type ScenarioInput,
  type SizePart,
  sizeMembers,
  sizeReport,
  trace,
  usualWishes,
} from "../../engine/index.ts";
import type { ScenarioProblem } from "../notebook/notebookPage.ts";
import { runPicture } from "../picture/runPicture.ts";
import { makeSurroundings } from "../weather/makeSurroundings.ts";
import type { WeatherText } from "../weather/weatherEdits.ts";
import type { Answer, Orders, Report, Want } from "./desk.ts";
import { oddsPicture } from "./oddsPicture.ts";
import { sizePicture } from "./sizePicture.ts";
import { versusPicture } from "./versusPicture.ts";

/** Members of the first pass, and between two looks at what the page wants by now. */
const COARSE_MEMBERS = 100;
const CHUNK_MEMBERS = 50;
const KEPT_ENSEMBLES = 12;

/** An ensemble with as many of its members as have been run. */
interface Started {
  readonly ensemble: PreparedEnsemble;
  part: OddsPart | null;
}

type Refusal = { readonly problems: readonly ScenarioProblem[] };

/** Thrown by work that nobody wants any more. */
class Unwanted extends Error {}

let orders: Orders = { round: 0, wants: [] };
let isAtWork = false;
let weatherFiles: readonly WeatherText[] = [];
const surroundings = makeSurroundings();
const started = new Map<string, Started | Refusal>();

const tell = (report: Report) => self.postMessage(report);
const turn = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

async function ensembleOf(document: ScenarioInput, seed: string, most: number): Promise<Started | Refusal> {
  const key = JSON.stringify([seed, most, document]);
  const known = started.get(key);
  if (known !== undefined) {
    started.delete(key);
    started.set(key, known);
    return known;
  }
  const read = readScenario(document);
  let fresh: Started | Refusal;
  if (!read.ok) fresh = { problems: read.problems };
  else {
    const ready = prepareEnsemble(read.scenario, await surroundings(read.scenario, weatherFiles), seed);
    fresh = ready.ok ? { ensemble: ready.ensemble, part: null } : { problems: ready.problems };
  }
  started.set(key, fresh);
  const oldest = started.keys().next().value;
  if (started.size > KEPT_ENSEMBLES && oldest !== undefined) started.delete(oldest);
  return fresh;
}

/** Runs on until an ensemble has `members`; gives way between chunks, and up when the page wants something else. */
async function extend(started: Started, members: number, tick: (done: number) => void): Promise<OddsPart> {
  const { round } = orders;
  const parts = started.part === null ? [] : [started.part];
  let done = started.part?.to ?? 0;
  const keep = () => {
    if (parts.length > 1 || started.part === null) started.part = mergeOdds(parts);
  };
  while (done < members) {
    const to = Math.min(members, done + CHUNK_MEMBERS);
    parts.push(runMembers(started.ensemble, done, to));
    done = to;
    tick(done);
    await turn();
    if (orders.round !== round) {
      keep();
      throw new Unwanted();
    }
  }
  keep();
  return started.part!;
}

async function answerTo(want: Want, members: number): Promise<Answer> {
  if (isQuick(want)) {
    const read = readScenario(want.document);
    if (!read.ok) return { kind: "problems", problems: read.problems };
    const run = trace(read.scenario, await surroundings(read.scenario, weatherFiles));
    if (!run.ok) return { kind: "problems", problems: run.problems };
    return want.kind === "run"
      ? { kind: "run", picture: runPicture(run.trace) }
      : { kind: "limits", picture: limits(run.trace, want.options) };
  }
  if (want.kind === "sizes") return mapTo(want, members);
  if (want.kind === "drivers") return driversTo(want);
  const documents = want.kind === "odds" ? [want.document] : want.documents;
  const of = members * documents.length;
  const ready: { ensemble: PreparedEnsemble; part: OddsPart }[] = [];
  for (const [k, document] of documents.entries()) {
    const found = await ensembleOf(document, want.seed, want.members);
    if ("problems" in found) return { kind: "problems", problems: found.problems };
    const part = await extend(found, members, (done) =>
      tell({ say: "progress", key: want.key, done: k * members + done, of }),
    );
    // What has more members already is no coarse pass: all its members are shown.
    ready.push({ ensemble: found.ensemble, part });
  }
  const [first, second] = ready;
  if (second === undefined)
    return { kind: "odds", picture: oddsPicture(first!.ensemble, oddsReport(first!.ensemble, first!.part)) };
  const least = Math.min(first!.part.to, second.part.to);
  if (first!.part.to !== second.part.to) {
    for (const [k, side] of ready.entries()) {
      if (side.part.to !== least) ready[k] = { ensemble: side.ensemble, part: runMembers(side.ensemble, 0, least) };
    }
  }
  return { kind: "versus", picture: versusPicture(ready[0]!, ready[1]!) };
}

/** Members of a map between two looks at what the page wants by now: each goes through every cell. */
const MAP_CHUNK_MEMBERS = 10;

async function mapTo(want: Extract<Want, { kind: "sizes" }>, members: number): Promise<Answer> {
  const { round } = orders;
  const read = readScenario(want.document);
  if (!read.ok) return { kind: "problems", problems: read.problems };
  const usual = usualWishes(read.scenario);
  const x = want.x ?? usual.x;
  const y = want.y ?? (x.at === usual.y?.at ? usual.x : usual.y);
  const ready = prepareSizes(want.document, x, y, await surroundings(read.scenario, weatherFiles), want.seed);
  if (!ready.ok) return { kind: "problems", problems: ready.problems };
  const parts: SizePart[] = [];
  for (let from = 0; from < members; from += MAP_CHUNK_MEMBERS) {
    const to = Math.min(members, from + MAP_CHUNK_MEMBERS);
    parts.push(sizeMembers(ready.map, from, to));
    tell({ say: "progress", key: want.key, done: to, of: members });
    await turn();
    if (orders.round !== round) throw new Unwanted();
  }
  return { kind: "sizes", picture: sizePicture(ready.map, sizeReport(ready.map, mergeSizes(parts), want.aims)) };
}

async function driversTo(want: Extract<Want, { kind: "drivers" }>): Promise<Answer> {
  const found = await ensembleOf(want.document, want.seed, want.members);
  if ("problems" in found) return { kind: "problems", problems: found.problems };
  const { ensemble } = found;
  const report = drivers(ensemble, want.members)!; // nothing gives it up
  return { kind: "drivers", picture: { report, remarks: ensemble.remarks } };
}

async function deliver(want: Want, members: number, whole: boolean): Promise<void> {
  let answer: Answer;
  try {
    answer = await answerTo(want, members);
  } catch (error) {
    if (error instanceof Unwanted) throw error;
    const message = `This could not be worked out: ${error instanceof Error ? error.message : String(error)}`;
    answer = { kind: "problems", problems: [{ code: "fault", path: [], message }] };
  }
  tell({ say: "answer", key: want.key, answer, whole: whole || answer.kind === "problems" });
}

/** What takes one run. */
function isQuick(want: Want): want is Extract<Want, { kind: "run" | "limits" }> {
  return want.kind === "run" || want.kind === "limits";
}

/** What takes seconds waits for what does not. */
const isLong = ({ kind }: Want) => kind === "sizes" || kind === "drivers";

/** Runs first, then a coarse pass over all, then the whole of each. */
async function work(): Promise<void> {
  const { round, wants } = orders;
  const check = async () => {
    await turn();
    if (orders.round !== round) throw new Unwanted();
  };
  for (const want of wants) {
    if (!isQuick(want)) continue;
    await deliver(want, 1, true);
    await check();
  }
  for (const want of wants) {
    if (isQuick(want) || isLong(want) || want.members <= COARSE_MEMBERS) continue;
    await deliver(want, COARSE_MEMBERS, false);
    await check();
  }
  for (const isLast of [false, true]) {
    for (const want of wants) {
      if (isQuick(want) || isLong(want) !== isLast) continue;
      await deliver(want, want.members, true);
      await check();
    }
  }
  tell({ say: "idle", round });
}

self.onmessage = async ({ data }: MessageEvent<Orders>) => {
  orders = data;
  weatherFiles = data.weatherFiles ?? weatherFiles;
  if (isAtWork) return;
  isAtWork = true;
  for (let round = -1; round !== orders.round; ) {
    round = orders.round;
    try {
      await work();
    } catch (error) {
      if (!(error instanceof Unwanted)) throw error;
    }
  }
  isAtWork = false;
};
