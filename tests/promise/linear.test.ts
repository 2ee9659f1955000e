import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { noteHtml } from "../../engine/answers/note/noteHtml.ts";
import { readReadings } from "../../engine/learn/readReadings.ts";
import { readMeterLog } from "../../engine/meter/readMeterLog.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { readNotebook } from "../../engine/notebook/readNotebook.ts";
import { readWeatherFile } from "../../engine/place/readWeatherFile.ts";
import type { Problem } from "../../engine/scenario/problem.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { timeGrid } from "../../engine/scenario/timeGrid.ts";
import { typedQuantity, typedWithUnit } from "../../explorer/parts/typedQuantity.ts";
import { workSteps } from "../../explorer/share/workSteps.ts";
import { effort } from "../effort.ts";

/**
 * Reading takes time in proportion to size. Each of these is so large that time in the square of its size would be thousands of
 * times what is allowed; what is allowed is about ten times what it takes.
 */
const MOST_EFFORT = 1000;
/** For texts of some hundred thousand letters, most of them spaces. */
const MOST_EFFORT_OF_SPACES = 300;

const SPACES = " ".repeat(100_000);
const base = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8")) as Record<string, unknown> & {
  gear: object[];
  bank: object;
  time: { start: string; end: string; stepMinutes: number };
};
const laid = timeGrid(base.time, "Europe/Vienna");
if (!laid.ok) throw new Error("the example's times are right");
const { grid } = laid;

const fields = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, k) => [`k${k}`, k]));
const times = <Item>(count: number, item: (k: number) => Item) => Array.from({ length: count }, (_, k) => item(k));

type Read = { ok: true } | { ok: false; problems: readonly Problem[] };

function expectEffort(work: () => unknown, most: number): void {
  expect(effort(work, most)).toBeLessThan(most);
}

/** Reads, and returns what is wrong with it, having seen to it that the list is short and its sentences are. */
function problemsOf(read: () => Read): readonly Problem[] {
  const result = read();
  if (result.ok) throw new Error("this was to be refused");
  const { problems } = result;
  expect(problems.length).toBeLessThanOrEqual(51);
  for (const { message } of problems) expect(message.length).toBeLessThan(6000);
  return problems;
}

describe("problems are listed up to fifty and then counted", () => {
  test("3,000 unknown fields", () => {
    const problems = problemsOf(() => readScenario({ ...base, ...fields(3000) }));
    expect(problems).toHaveLength(51);
    expect(problems[49]!.message).toMatch(/no field "k49"/);
    expect(problems[50]).toEqual({
      code: "more-problems",
      path: [],
      message: "There are 2,950 more problems; put these right first and read it again.",
    });
  });

  test("fifty are all named, and of fifty-one one is counted", () => {
    expect(problemsOf(() => readScenario({ ...base, ...fields(50) }))).toHaveLength(50);
    expect(problemsOf(() => readScenario({ ...base, ...fields(51) })).at(-1)!.message).toMatch(/is one more problem;/);
  });

  test("ids that stand twice, which are found after the schema", () => {
    const gear = times(200, () => ({ ...base.gear[0]!, id: "same" }));
    expect(problemsOf(() => readScenario({ ...base, gear })).at(-1)!.message).toMatch(/149 more problems/);
  });

  test("readings outside the event", () => {
    const readings = times(2000, () => ({ at: "2031-01-01T00:00", restV: 12 }));
    const problems = problemsOf(() => readReadings({ format: "duskline-readings", version: 1, readings }, grid));
    expect(problems.at(-1)!.message).toMatch(/1,950 more problems/);
  });

  test("notebooks", () => {
    const entries = times(200, () => ({}));
    const read = readNotebook(JSON.stringify(notebook({ entries })));
    expect(read.ok ? [] : read.sentences).toHaveLength(9);
    expect(read.ok ? "" : read.sentences.at(-1)).toBe("And 192 more.");
  });
});

function notebook(change: object): object {
  const scenarios = [{ id: "a", name: "A", document: base }];
  const head = { format: "duskline-notebook", version: 1, id: "a", title: "A", seed: "1", members: 1000 };
  return { ...head, scenarios, entries: [], ...change };
}

describe("two million letters of anything", () => {
  const readingsOf = (readings: unknown[]) => ({ format: "duskline-readings", version: 1, readings });
  const rows = (row: string) => `${row}\n`.repeat(Math.floor(1_000_000 / (row.length + 1)));
  const scenario = (change: object) => ({ text: JSON.stringify({ ...base, ...change }), read: readScenario });
  const readings = (list: unknown[]) => {
    return { text: JSON.stringify(readingsOf(list)), read: (text: string) => readReadings(text, grid) };
  };
  const weather = (text: string) => ({ text, read: (given: string) => readWeatherFile(given, "a.csv") });
  const log = (text: string) => ({ text, read: (given: string) => readMeterLog(given) });
  type Document = { text: string; read: (text: string) => Read };
  const documents: [string, () => Document][] = [
    ["a scenario of unknown fields", () => scenario({ bank: fields(10_000) })],
    ["gear of unknown fields", () => {
      return scenario({ gear: times(200, (k) => ({ ...base.gear[0]!, id: `g${k}`, ...fields(280) })) });
    }],
    ["one field with a name of 900,000 letters", () => scenario({ ["k".repeat(900_000)]: 1 })],
    ["gear with an id of 900,000 letters", () => scenario({ gear: [{ id: "i".repeat(900_000) }] })],
    ["a list of 300,000 gear", () => scenario({ gear: times(300_000, () => ({})) })],
    ["a selector of 200,000 inputs", () => scenario({ selector: { mode: "either", inputs: times(200_000, () => "x") } })],
    ["200,000 readings", () => readings(times(200_000, () => ({})))],
    ["readings of unknown fields", () => readings(times(2000, () => fields(60)))],
    ["weather with no times", () => weather(`time,ghi\n${rows("x,1")}`)],
    ["weather with one hour again and again", () => weather(`time,ghi\n${rows("2026-10-09T12:00Z,1")}`)],
    ["weather with a million columns", () => weather(`ghi${",a".repeat(1_000_000)}`)],
    ["weather with a cell of two million letters", () => weather(`time,ghi\n2026-10-09T12:00Z,${"9".repeat(2_000_000)}`)],
    ["weather of remarks", () => weather("#\n".repeat(500_000))],
    ["a log with a million columns", () => log(`time,${"a,".repeat(1_000_000)}\n1,2\n`)],
    ["a log with no rows", () => log(`time,bank V\n${",".repeat(2_000_000)}`)],
    ["a log with titles of two million letters", () => log(`${"time ".repeat(400_000)},x\n1,2\n`)],
  ]; // biome-ignore format: a list of cases

  test.each(documents)("%s", (_, make) => {
    const { text, read } = make();
    expectEffort(() => problemsOf(() => read(text)), MOST_EFFORT);
  });

  test("a log whose rows lie decades apart", () => {
    const text = `time,bank V\n${times(50_000, (k) => {
      return `${1900 + ((k * 37) % 200)}-0${1 + (k % 9)}-${10 + (k % 17)} 0${k % 10}:${10 + (k % 50)},12`;
    }).join("\n")}`;
    expectEffort(() => expect(readMeterLog(text, {}, "Europe/Vienna").ok).toBe(true), MOST_EFFORT);
  });

  test.each([
    ["of unknown fields", notebook(fields(140_000))],
    ["of 190,000 entries", notebook({ entries: times(190_000, () => ({})) })],
    ["of 190,000 scenarios", notebook({ scenarios: times(190_000, () => 1) })],
    ["whose scenario holds a list of 190,000", notebook({ scenarios: [{ id: "a", name: "A", document: { ...base, note: times(190_000, () => 1) } }] })],
  ])("a notebook %s", (_, document) => {
    const text = JSON.stringify(document).slice(0, 2_000_000);
    expectEffort(() => readNotebook(text), MOST_EFFORT);
  }); // biome-ignore format: a list of cases
});

describe("a hundred thousand spaces", () => {
  const cells: [string, () => unknown][] = [
    ["in a time of plain weather", () => {
      return readWeatherFile(`time,ghi\n2026-10-09T12:00${SPACES}x,1\n`, "a.csv");
    }],
    ["in a fact of plain weather", () => {
      return readWeatherFile(`#${SPACES}latitude${SPACES}:${SPACES}1${SPACES}x\ntime,ghi\n2026-10-09T12:00Z,1\n`, "a.csv");
    }],
    ["in a time of TMY3", () => {
      return readWeatherFile(`1,a,b,1,46,7,500\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2)\n${SPACES}1/1/2001${SPACES}x,${SPACES}13:00${SPACES}x,1\n`, "a.csv");
    }],
    ["in the cells of EPW", () => {
      return readWeatherFile(`LOCATION,,,,,,${SPACES}46${SPACES}x,7,1,500\n`, "a.epw");
    }],
    ["in a log's clock", () => readMeterLog(`time,bank V\n2026-10-09 12:00,12\n2026-10-09 12:10${SPACES}x,12\n`)],
    ["in a log's clock, behind the seconds", () => {
      return readMeterLog(`date,time,bank V\n2026-10-09,12:00:00,12\n2026-10-09,12:10:00${SPACES}+01:00${SPACES}x,12\n`);
    }],
    ["in a log's cell", () => readMeterLog(`time,bank V\n2026-10-09 12:00,12\n2026-10-09 12:10,12${SPACES}x\n`)],
    ["in a log's cell, with a decimal comma", () => {
      return readMeterLog(`time;bank V\n2026-10-09 12:00;12,1\n2026-10-09 12:10;12,1${SPACES}x\n`);
    }],
    ["in a log's title", () => readMeterLog(`time,bank${SPACES}amp${SPACES}V\n2026-10-09 12:00,12\n2026-10-09 12:10,12\n`)],
    ["in a number that is typed", () => typedQuantity(`12${SPACES}x\ny`, "W")],
    ["in a number that is typed with its unit", () => typedWithUnit(`12${SPACES}1${SPACES}m${SPACES}?1`, "m")],
  ]; // biome-ignore format: a list of cases
  test.each(cells)("%s", (_, read) => {
    expectEffort(read, MOST_EFFORT_OF_SPACES);
  });

  test("and as many figures", () => {
    const figures = "1".repeat(100_000);
    expectEffort(() => typedQuantity(`${figures}\n-`, "W"), MOST_EFFORT_OF_SPACES);
    const log = () => readMeterLog(`time,bank V\n2026-10-09 12:00,${figures}x\n2026-10-09 12:10,12\n`);
    expectEffort(log, MOST_EFFORT_OF_SPACES);
  });
});

describe("a note", () => {
  const say = () => ({ text: "1", state: "fresh" });
  test.each([
    ["lists on one line", "- ".repeat(24_000)],
    ["numbered lists on one line", "1. ".repeat(16_000)],
    ["lists in quotes", "> - ".repeat(120)],
  ])("of %s nested thousands deep stands as it was written, and says why", (_, text) => {
    const html = noteHtml(`${text}a <b>`, say);
    expect(html).toMatch(
      /^<p>Lists or quotes nest more than 20 deep here, so the note stands as it was written\.<\/p>/,
    );
    expect(html).toContain("a &lt;b&gt;</code>");
  });

  test("of one long word stands as it was written", () => {
    const read = () => noteHtml(`${"a.".repeat(24_000)}@`, say);
    expect(read()).toMatch(/A word here has more than 1000 letters/);
    expectEffort(read, MOST_EFFORT);
  });

  test("that somebody would write is read", () => {
    const html = noteHtml(
      "1. one\n   - two\n     > three\n\n- - - - - - - - - - - - - - - - - - - - - - - - - - - - -\n",
      say,
    );
    expect(html).toMatch(/<ol>[\s\S]*<ul>[\s\S]*<blockquote>[\s\S]*<hr>/);
  });
});

describe("the estimate of the work that a link asks for", () => {
  test("looks at each scenario once, however often notes ask for it", () => {
    const scenarios = [
      { id: "a", name: "A", document: { ...base, note: "x".repeat(400_000) } },
      ...times(39, (k) => {
        const basedOn = k === 0 ? "a" : `b${k - 1}`;
        return { id: `b${k}`, name: "B", basedOn, changes: [{ at: "time.end", to: `2026-10-11T16:${10 + k}` }] };
      }),
    ];
    const entries = times(20, (n) => {
      const text = times(1500, (k) => `{saved, b${k % 39} over b${(k + n) % 39}}`).join(" ");
      return { id: `n${n}`, kind: "note", title: "N", doc: { text } };
    });
    const large = notebook({ scenarios, entries }) as Notebook;
    expect(workSteps(large)).toBeGreaterThan(1e8);
    expectEffort(() => workSteps(large), MOST_EFFORT);
  });
});
