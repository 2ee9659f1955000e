import { expect, test } from "vitest";
import type { Want } from "../../engine/answers/asked.ts";
import type { DriversPicture } from "../../engine/answers/drivers/driversPicture.ts";
import { oddsPicture } from "../../engine/answers/forecast/oddsPicture.ts";
import { kindOf } from "../../engine/answers/kinds.ts";
import type { SizePicture } from "../../engine/answers/sizing/sizePicture.ts";
import { versusPicture } from "../../engine/answers/versus/versusPicture.ts";
import { drivers } from "../../engine/drivers/drivers.ts";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { failsFromStep } from "../../engine/odds/fails.ts";
import { oddsReport, runMembers } from "../../engine/odds/odds.ts";
import { readWeatherFile } from "../../engine/place/readWeatherFile.ts";
import type { WeatherFile } from "../../engine/place/weatherFile.ts";
import { serveTasks } from "../../engine/pool/task.ts";
import { kindOfTask } from "../../engine/pool/taskKinds.ts";
import { makeTaskPool } from "../../engine/pool/taskPool.ts";
import type { Surroundings } from "../../engine/run/surroundings.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../../engine/scenario/scenario.ts";
import { pairedCharge } from "../../engine/versus/pairedCharge.ts";
import type { Report } from "../../explorer/results/desk.ts";
import { makeDeskWork } from "../../explorer/results/makeDeskWork.ts";
import { oneMapTask } from "../engine/pool/oneEnsemble.ts";

const SMALL = oneMapTask(0, 1).document as ScenarioInput;
const withAh = (blockAh: number): ScenarioInput => ({ ...SMALL, bank: { ...SMALL.bank, blockAh } });
const turn = () => new Promise<void>((resolve) => setImmediate(resolve));

/** A desk whose two workers take turns in this thread; what passes is cloned as a real worker's would be. */
function workbench(surroundings: (scenario: Scenario) => Surroundings = () => ({})) {
  const said: Report[] = [];
  const listeners: (() => void)[] = [];
  const pool = makeTaskPool(2, (reply) => {
    const take = serveTasks((answer) => reply(structuredClone(answer)), turn);
    return { post: (order) => take(structuredClone(order)), keep: () => {}, stop: () => {} };
  });
  const take = makeDeskWork({
    pool,
    surroundings: async (scenario) => surroundings(scenario),
    tell: (report) => {
      said.push(structuredClone(report));
      for (const listener of listeners) listener();
    },
    nowMs: () => performance.now(),
    whileItDraws: turn,
    turn,
    makeCancel: () => new AbortController(),
  });
  const until = (isIt: (report: Report) => boolean) =>
    new Promise<void>((resolve) => {
      const look = () => said.some(isIt) && resolve();
      listeners.push(look);
      look();
    });
  const answers = () => said.filter((report) => report.say === "answer");
  return { take, said, until, answers };
}

const want = (kind: string, key: string, documents: readonly ScenarioInput[], members: number, choices = {}): Want => ({
  key,
  kind,
  documents,
  choices,
  seed: "4127",
  members,
});
const odds = (key: string, document: ScenarioInput, members = 240) => want("forecast", key, [document], members);
const contestant = (document: ScenarioInput, members: number, surroundings: Surroundings = {}) => {
  const read = readScenario(document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepareEnsemble(read.scenario, surroundings, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return { ensemble: ready.ensemble, part: runMembers(ready.ensemble, 0, members) };
};
const engineOdds = (document: ScenarioInput, members: number) => {
  const { ensemble, part } = contestant(document, members);
  return oddsPicture(ensemble, oddsReport(ensemble, part));
};
const isIdle =
  (round: number) =>
  (report: Report): boolean =>
    report.say === "idle" && report.round === round;

test("a coarse pass over all comes first, then all members of each; both are the engine's own", async () => {
  // What is fetched when it is first asked for would come whenever the disk has it; here the order of the work is looked at.
  await Promise.all([
    ...["run", "forecast"].map((kind) => kindOf(kind).question!.work()),
    kindOfTask({ kind: "odds" }),
  ]);
  const { take, until, answers } = workbench();
  take({ round: 1, wants: [want("run", "run", [SMALL], 0), odds("a", SMALL), odds("b", withAh(90))] });
  await until(isIdle(1));
  const order = answers().map(({ key, whole }) => `${key} ${whole ? "whole" : "coarse"}`);
  expect(order.slice(0, 3).sort()).toEqual(["a coarse", "b coarse", "run whole"]);
  expect(order.slice(3).sort()).toEqual(["a whole", "b whole"]);
  const pictures = answers()
    .filter(({ key }) => key === "b")
    .map(({ answer }) => (answer.ok ? answer.picture : null));
  expect(pictures).toEqual([engineOdds(withAh(90), 100), engineOdds(withAh(90), 240)]);
});

// A hundred are as many as a coarse pass has, and yet all that this notebook asks for.
test.each([240, 100])(
  "two scenarios are held against one another under %i skies as the engine does it",
  async (members) => {
    const { take, until, answers } = workbench();
    const documents = [SMALL, withAh(90)] as const;
    take({
      round: 1,
      wants: [odds("a", SMALL, members), want("versus", "v", documents, members)],
    });
    await until(isIdle(1));
    const last = answers().findLast(({ key }) => key === "v")!;
    const picture = versusPicture(contestant(documents[0], members), contestant(documents[1], members));
    expect(last.answer).toEqual({ ok: true, picture });
  },
);

/** Sixty days of one and the same sun. */
function weatherFile(name: string, noonWm2: number): WeatherFile {
  const lines = ["# latitude: 47", "# longitude: 15.5", "# utcOffset: 1", "time,ghi,temp_c"];
  for (let hour = 0; hour < 60 * 24; hour++) {
    const clock = new Date(Date.UTC(2026, 4, 20) + hour * 3_600_000).toISOString().slice(0, 16);
    const light = Math.max(0, Math.round(noonWm2 * Math.sin(((hour % 24) - 6) * (Math.PI / 12))));
    lines.push(`${clock},${light},15`);
  }
  const read = readWeatherFile(lines.join("\n"), name);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.file;
}

test.each([
  ["the second alone has a weather file", null, "dull.csv"],
  ["the first alone has one", "dull.csv", null],
  ["both have the same", "dull.csv", "dull.csv"],
  ["each has its own", "bright.csv", "dull.csv"],
])("pairs are run under each side's own weather: %s", async (_, first, second) => {
  const files = new Map([
    ["dull.csv", weatherFile("dull.csv", 250)],
    ["bright.csv", weatherFile("bright.csv", 700)],
  ]);
  const under = (name: string | null): Surroundings => (name === null ? {} : { weatherFile: files.get(name)! });
  const { take, until, answers } = workbench(({ weather }) => under(weather.kind === "file" ? weather.file : null));
  const documents = [first, second].map(
    (file): ScenarioInput =>
      file === null ? SMALL : { ...SMALL, weather: { kind: "file", file, maxDistanceKm: 1000 } },
  ) as [ScenarioInput, ScenarioInput];
  take({ round: 1, wants: [want("versus", "v", documents, 100)] });
  await until(isIdle(1));
  const [one, other] = [contestant(documents[0], 100, under(first)), contestant(documents[1], 100, under(second))];
  const paired = pairedCharge(one.ensemble, other.ensemble, 0, 100);
  expect(answers().at(-1)!.answer).toEqual({ ok: true, picture: versusPicture(one, other, paired) });
});

test("the newest edit wins: what nobody wants any more is dropped, and nothing is worked out twice", async () => {
  const { take, until, answers } = workbench();
  take({ round: 1, wants: [odds("old", SMALL, 100_000)] });
  await until((report) => report.say === "answer" && report.key === "old");
  take({ round: 2, wants: [odds("new", withAh(90))] });
  await until(isIdle(2));
  expect(answers().map(({ key, whole }) => [key, whole])).toEqual([
    ["old", false],
    ["new", false],
    ["new", true],
  ]);
});

test("while somebody drags, coarse passes are let finish, and those in between are passed over", async () => {
  const { take, until, answers } = workbench();
  for (let round = 1; round <= 6; round++) take({ round, wants: [odds(`ah ${round}`, withAh(60 + round))] });
  await until(isIdle(6));
  expect(answers().map(({ key }) => key)).toEqual(["ah 1", "ah 6", "ah 6"]);
});

test("stopping ends the work, and problems come back in sentences", async () => {
  const { take, until, answers, said } = workbench();
  take({ round: 1, wants: [odds("long", SMALL, 100_000)] });
  await until((report) => report.say === "answer");
  take({ round: 2, wants: [] });
  await until(isIdle(2));
  expect(answers().map(({ whole }) => whole)).toEqual([false]);
  take({ round: 3, wants: [odds("bad", withAh(-1)), odds("skyless", { ...SMALL, weather: { kind: "typical" } })] });
  await until(isIdle(3));
  const found = said.flatMap((report) => (report.say === "answer" && !report.answer.ok ? [report] : []));
  expect(found.map(({ key, whole }) => [key, whole])).toEqual([
    ["bad", true],
    ["skyless", true],
  ]);
});

test("maps and drivers come last, with how far they are", async () => {
  const { take, until, answers } = workbench();
  const { x, y } = oneMapTask(0, 1);
  const aims = { targetShare: 0.9, autonomyDays: 2 };
  take({
    round: 1,
    wants: [
      want("sizing", "map", [SMALL], 40, { x, y, aims }),
      want("drivers", "drivers", [SMALL], 30),
      odds("a", SMALL),
    ],
  });
  await until(isIdle(1));
  // The map comes twice: as it was asked for, and with what was found between its cells.
  expect(answers().map(({ key, whole }) => (whole ? key : `${key} so far`))).toEqual([
    "a so far",
    "a",
    "map so far",
    "map",
    "drivers",
  ]);
  const [, , , map, last] = answers();
  const { outcomes } = runMembers(contestant(SMALL, 1).ensemble, 0, 40);
  const held = outcomes.belowFromStep.filter((_, m) => failsFromStep(outcomes, m) < 0);
  const pictureOf = <Picture>(said: typeof map) => (said!.answer as { picture: Picture }).picture;
  expect(pictureOf<SizePicture>(map).report.rows[1]!.cells[0]!.holds.count).toBe(held.length);
  expect(pictureOf<DriversPicture>(last).report).toEqual(drivers(contestant(SMALL, 1).ensemble, 30));
});

test("memory of answers that are kept no longer serves the next, and none of them shows in it", async () => {
  const { take, until, answers } = workbench();
  const asked = Array.from({ length: 40 }, (_, k) => 60 + 2 * k);
  for (const [k, ah] of asked.entries()) {
    take({ round: k + 1, wants: [odds(`${ah}`, withAh(ah), 110), odds(`${ah}.5`, withAh(ah + 0.5), 110)] });
    await until(isIdle(k + 1));
  }
  const pictures = answers().flatMap(({ key, whole, answer }) => (answer.ok && whole ? [[key, answer.picture]] : []));
  expect(pictures.length).toBe(80);
  expect(pictures).toEqual(pictures.map(([key]) => [key, engineOdds(withAh(Number(key)), 110)]));
});
