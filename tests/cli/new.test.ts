import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test, vi } from "vitest";
import { makeCallContext } from "../../engine/cli/callContext.ts";
import { NEW_QUESTIONS } from "../../engine/cli/newQuestions.ts";
import { newVerb } from "../../engine/cli/newVerb.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { callHere } from "./callHere.ts";

vi.setConfig({ testTimeout: 120_000 });

const folder = mkdtempSync(join(tmpdir(), "duskline-"));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

const duskline = (...args: string[]) => callHere(args);
const WHERE_AND_WHEN = ["--at", "-33.9,18.4", "--from", "2026-11-06T14:00", "--to", "2026-11-08 14:00"];

/** Lets the verb ask somebody who answers these, the return key after them. */
async function asked(answers: readonly string[], values: Record<string, string> = {}) {
  const questions: string[] = [];
  const written: { path: string; text: string }[] = [];
  const printed: string[] = [];
  const outcome = await newVerb.run({
    scenario: "",
    others: [],
    variant: undefined,
    values,
    context: makeCallContext({ weatherAnywhere: false, input: async function* () {}, progress: () => {} }),
    print: (text) => printed.push(text),
    write: async (path, text) => void written.push({ path, text }),
    requireRoom: async () => {},
    ask: async (question) => {
      questions.push(question);
      return answers[questions.length - 1] ?? "";
    },
  });
  return { outcome, questions, printed: printed.join("\n"), path: written[0]?.path, document: JSON.parse(written[0]?.text ?? "null") };
} // biome-ignore format: short

test("options make a scenario that check passes, never over a file that is there", async () => {
  const options = ["--bank", "2x100", "--chemistry", "agm", "--panels", "3x120", "--radio", "fm50", "--gear", "fridge,lamp:3", "--backup", "generator"]; // biome-ignore format: a call
  const made = await duskline("new", at("plan.json"), "--name", "Côte d'Été", ...WHERE_AND_WHEN, ...options);
  expect(made).toMatchObject({ code: 0, err: "" });
  expect(made.out).toMatch(/plan\.json is written, and it reads: Côte d'Été, 2026-11-06 14:00 to 2026-11-08 14:00 \(Africa\/Johannesburg\)/);
  expect(made.out).toMatch(/Taken as usual: --shade open, .*--elevation 400/);
  expect(await duskline("check", at("plan.json"))).toMatchObject({ code: 0, err: "" });
  const read = readScenario(readFileSync(at("plan.json"), "utf8"));
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const { bank, panels, stations, gear, sources, name } = read.scenario;
  expect(bank).toMatchObject({ chemistry: "agm", inParallel: 2, blockAh: 100, reserveShare: 0.5 });
  // South of the equator panels look north.
  expect(panels[0]).toMatchObject({ count: 3, module: { ratedW: 120 }, mount: { azimuthDeg: 0 } });
  expect(stations[0]!.radio.ratedW).toBe(50);
  expect(gear.map(({ id, count }) => [id, count])).toEqual([["lamp", 3], ["fridge", 1]]);
  expect([sources[0]!.kind, name]).toEqual(["generator", "Côte d'Été"]);
  expect(await duskline("new", at("plan.json"), ...WHERE_AND_WHEN)).toMatchObject({ code: 2, err: expect.stringMatching(/is there already/) });
  expect((await duskline("new", at("plan.json"), ...WHERE_AND_WHEN, "--force")).code).toBe(0);
  expect((await duskline("new", at("b.json"), ...WHERE_AND_WHEN, "-o", at("c.json"))).code).toBe(2);
}); // biome-ignore format: tables

test("- prints it, and trace takes that from standard input", async () => {
  const { out } = await duskline("new", "-", ...WHERE_AND_WHEN);
  writeFileSync(at("piped.json"), out);
  expect((await duskline("trace", at("piped.json"))).code).toBe(0);
});

test("where nobody can be asked, place and time must be said, each wrong value in a sentence", async () => {
  expect(await duskline("new", at("x.json"))).toMatchObject({ code: 2, err: expect.stringMatching(/^new needs --at, --from, --to where nobody can be asked/) });
  for (const [option, value, sentence] of [
    ["--at", "91,0", /--at is "91,0" but must be latitude and longitude/],
    ["--to", "2026-11-06T14:00", /must be after the beginning \(2026-11-06 14:00\)/],
    ["--to", "2027-11-06", /at most 60 days later/],
    ["--from", "2026-02-30", /must be a local time/],
    ["--bank", "9x100", /ampere-hours from 5 to 600, up to 8/],
    ["--gear", "zeppelin", /"zeppelin" is none/],
    ["--gear", "lamp:0", /how many of each/],
    ["--power", "101", /watts from 0.1 to the radio's 100/],
    ["--hours", "c", null],
  ] as const) {
    const { code, err } = await duskline("new", "-", ...WHERE_AND_WHEN, option, value);
    expect(code, value).toBe(sentence === null ? 0 : 2);
    if (sentence !== null) expect(err).toMatch(sentence);
  }
}); // biome-ignore format: a table

test("whoever sits at the keyboard is asked what decides most; a wrong answer is asked again, the return key takes what is usual", async () => {
  const answers = ["Moor", "46.9 15.6", "2026-10-09", "2026-10-08", "2026-10-11 15:30", "x", "280"];
  const { outcome, questions, path, document } = await asked(answers);
  expect(outcome.ok).toBe(true);
  expect(path).toBe("moor.json");
  expect(document).toMatchObject({
    name: "Moor",
    place: { latitudeDeg: 46.9, longitudeDeg: 15.6, zone: "Europe/Vienna" },
    time: { start: "2026-10-09T12:00", end: "2026-10-11T15:30" },
    bank: { blockAh: 280, inParallel: 1 },
  });
  expect(questions[4]).toMatch(/^That must be after the beginning .*\nWhen does it end\?/);
  expect(questions).toHaveLength(NEW_QUESTIONS.filter((each) => each.asked !== null).length + 2);
  expect(readScenario(document).ok).toBe(true);
});

test("what an option says, and what an answer leaves nothing to ask about, is not asked", async () => {
  const { questions, printed } = await asked([], { stations: "0", panels: "0" });
  for (const words of [/operate/, /radio/, /Panels/, /stands around/, /sent/]) {
    expect(questions.filter((question) => words.test(question))).toEqual([]);
  }
  expect(printed).toMatch(/our-place\.json is written/);
});
