import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { traceJson } from "../../engine/cli/traceJson.ts";
import { loadClimateTables, readWeatherFile } from "../../engine/place/index.ts";
import { trace } from "../../engine/run/index.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import { type Problem, readScenario, readVariant, type Scenario } from "../../engine/scenario/index.ts";
import { type SchemaNode, scenarioInputSchema } from "../../engine/scenario/scenarioSchema.ts";
import { numberFields, put, type Step, sample, scenarioWith, valueAt } from "./sampleScenario.ts";

const climate = await loadClimateTables();
const FIELDS = numberFields();
const WORDS_OF_A_MACHINE = /Invalid|undefined|NaN |\[object|TypeError|Infinity V/;

/** The problems of something that must not read. */
function problemsOf(document: unknown): readonly Problem[] {
  const result = readScenario(document);
  return result.ok ? [] : result.problems;
}

/** One sentence a person can act on: it ends, holds no line break, and no words of a machine. */
function expectSentence({ message, code, path }: Problem): void {
  expect(message).toMatch(/[.?]$/);
  expect(message).not.toMatch(/\n/);
  expect(message.replace(/ is (-?Infinity|NaN) but/, "")).not.toMatch(WORDS_OF_A_MACHINE);
  expect(code).toMatch(/^[a-z-]+$/);
  expect(Array.isArray(path)).toBe(true);
}

/** The path as the messages speak it: list entries by their id where they have one, else counted from one. */
function spoken(document: unknown, path: readonly (string | number)[]): string {
  return path
    .map((key, depth) => {
      if (typeof key === "string") return key;
      const id = (valueAt(document, path.slice(0, depth + 1)) as { id?: unknown } | null | undefined)?.id;
      return typeof id === "string" ? id : String(key + 1);
    })
    .join(".");
}

/** Every place in a value where a number is none. */
function wrongNumbers(value: unknown, at = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => wrongNumbers(inner, `${at}.${key}`));
}

/** Runs a scenario and looks at every number of the result. */
function expectFinite(scenario: Scenario, what: string): void {
  const result = trace(scenario, { climate });
  if (!result.ok) {
    // Near the South Pole there is no climate to be had, and that is said.
    expect(
      result.problems.map((problem) => problem.code),
      what,
    ).toEqual(["no-climate-here"]);
    return;
  }
  const json = traceJson(result.trace) as { steps: { middleMs: number[] } };
  expect(json.steps.middleMs.length, what).toBeGreaterThan(0);
  expect(wrongNumbers(json).slice(0, 5), what).toEqual([]);
}

test("the field list comes from the schema and is not empty", () => {
  expect(FIELDS.length).toBeGreaterThan(140);
  const names = FIELDS.map((field) => field.name);
  expect(names).toContain("bank.blockAh");
  expect(names).toContain("panels[].mount(aimed).aims[].tiltDeg");
  expect(names).toContain("weather(typical).monthlyKt[]");
});

describe("a number field", () => {
  test.each(FIELDS)("$name is refused when it is no number in its range", ({ steps, facts }) => {
    expect(problemsOf(scenarioWith(steps).document)).toEqual([]);
    const outside = [facts.low - 1, facts.high + 1, 1e308, -1e308, Number.POSITIVE_INFINITY, Number.NaN];
    for (const value of [...outside, "twelve", true, [], {}]) {
      const { document, path } = scenarioWith(steps);
      put(document, path, value);
      const problems = problemsOf(document);
      for (const problem of problems) expectSentence(problem);
      const own = problems.find((problem) => problem.path.join(".") === path.join("."));
      expect(own, `${path.join(".")} = ${String(value)}`).toBeDefined();
      const shown = typeof value === "object" ? "" : String(value);
      for (const part of [spoken(document, path), shown, String(facts.low), String(facts.high), facts.what])
        expect(own!.message).toContain(part);
      if (facts.unit !== "") expect(own!.message).toContain(facts.unit);
    }
  });

  test.each(FIELDS.filter((field) => field.isNeeded))("$name is asked for when it is missing", ({ steps, facts }) => {
    const { document, path } = scenarioWith(steps);
    put(document, path, undefined);
    const own = problemsOf(document).find((problem) => problem.path.join(".") === path.join("."));
    expect(own?.code).toBe("missing");
    expectSentence(own!);
    for (const part of [spoken(document, path), "missing", String(facts.low), String(facts.high), facts.what])
      expect(own!.message).toContain(part);
  });

  const named = FIELDS.filter((field) => "key" in field.steps.findLast((step) => !("option" in step))!);
  test.each(named)("$name is recognised when it is misspelt", ({ steps }) => {
    const { document, path } = scenarioWith(steps);
    const value = valueAt(document, path);
    const key = path.at(-1) as string;
    put(document, path, undefined);
    put(document, [...path.slice(0, -1), `${key}x`], value);
    const own = problemsOf(document).find((problem) => problem.path.at(-1) === `${key}x`);
    expect(own?.code).toBe("unknown-field");
    expectSentence(own!);
    expect(own!.message).toContain(`did you mean ${key}?`);
  });

  test.each(FIELDS)("$name runs at either end of its range without NaN", ({ name, steps, facts }) => {
    let tried = 0;
    for (const value of [facts.low, facts.high]) {
      const { document, path } = scenarioWith(steps);
      put(document, path, value);
      const result = readScenario(document);
      if (!result.ok) {
        // The end of one range may contradict another field; it may not be refused for anything else.
        expect(result.problems.map((problem) => problem.code)).toEqual(result.problems.map(() => "contradiction"));
        continue;
      }
      if (result.scenario.weather.kind === "file") continue;
      expectFinite(result.scenario, `${name} = ${value}`);
      tried++;
    }
    if (!name.startsWith("weather(file)")) expect(tried).toBeGreaterThan(0);
  });
});

test("anything of the wrong type, anywhere, is refused with a sentence or harmless", () => {
  let refused = 0;
  const visit = (node: SchemaNode, steps: readonly Step[]): void => {
    const last = steps.at(-1);
    for (const value of last === undefined || "option" in last
      ? []
      : [null, 5, "x y", true, [], {}, "", "x".repeat(5000)]) {
      const { document, path } = scenarioWith(steps);
      put(document, path, value);
      for (const problem of problemsOf(document)) {
        refused++;
        expectSentence(problem);
      }
    }
    for (const [key, field] of Object.entries(node.properties ?? {})) visit(field, [...steps, { key }]);
    (node.oneOf ?? node.anyOf ?? []).forEach((inner, option) => {
      visit(inner, [...steps, { option }]);
    });
    if (node.items !== undefined) visit(node.items, [...steps, { item: true }]);
  };
  visit(scenarioInputSchema(), []);
  expect(refused).toBeGreaterThan(1500);
});

test.each([null, 5, "", "text", "[]", "{", "null", [], undefined, Number.NaN, "\u0000", '{"a":1,}'])(
  "a document that is %j is refused with a sentence",
  (document) => {
    const problems = problemsOf(document);
    expect(problems.length).toBeGreaterThan(0);
    for (const problem of problems) expectSentence(problem);
  },
);

const example = (name: string) => JSON.parse(readFileSync(`scenarios/${name}.json`, "utf8")) as unknown;

/** The example, changed; `to: undefined` takes out. */
function changed(name: string, changes: { at: string; to?: unknown; remove?: true }[]): unknown {
  const result = applyChanges(example(name), changes as never);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.document;
}

test("each number of the examples runs at either end of its range without NaN", () => {
  let ran = 0;
  for (const name of ["walnut-grove", "polar-hut"]) {
    const base = changed(name, [
      { at: "time.stepMinutes", to: 60 },
      { at: "time.end", to: name === "walnut-grove" ? "2026-10-09T10:00" : "2027-01-23T12:00" },
    ]);
    const visit = (node: SchemaNode, value: unknown, path: (string | number)[]): void => {
      const options = node.oneOf ?? node.anyOf;
      if (options !== undefined) {
        const kind = (value as { kind?: unknown } | null)?.kind;
        for (const option of options) {
          if (option.properties?.kind === undefined || option.properties.kind.const === kind)
            visit(option, value, path);
        }
        return;
      }
      if (node.quantity !== undefined && typeof value === "number") {
        for (const end of [node.quantity.low, node.quantity.high]) {
          const document = structuredClone(base);
          put(document, path, end);
          const result = readScenario(document);
          if (!result.ok) continue;
          ran++;
          expectFinite(result.scenario, `${path.join(".")} = ${end}`);
        }
      }
      if (typeof value !== "object" || value === null) return;
      for (const [key, inner] of Object.entries(value)) {
        if (Array.isArray(value)) visit(node.items ?? {}, inner, [...path, Number(key)]);
        else visit(node.properties?.[key] ?? {}, inner, [...path, key]);
      }
    };
    visit(scenarioInputSchema(), base, []);
  }
  expect(ran).toBeGreaterThan(250);
});

test("several problems are all listed, each once", () => {
  const problems = problemsOf(
    changed("walnut-grove", [
      { at: "place.latitudeDeg", to: 146 },
      { at: "bank.blockAh", to: -3 },
      { at: "stations.hf-run.sendingShare", to: 20 },
      { at: "panels.roof.count", to: 2.5 },
      { at: "gear.router.use.when", to: "sometimes" },
      { at: "bank.chemistry", remove: true },
    ]),
  );
  expect(problems.map((problem) => problem.path.join("."))).toEqual(
    expect.arrayContaining([
      "place.latitudeDeg",
      "bank.blockAh",
      "stations.0.sendingShare",
      "panels.0.count",
      "gear.0.use.when",
      "bank.chemistry",
    ]),
  );
  expect(problems).toHaveLength(6);
  for (const problem of problems) expectSentence(problem);
});

test("numbers that JSON cannot mean are refused", () => {
  const text = readFileSync("scenarios/walnut-grove.json", "utf8");
  const withAh = (ah: string) => text.replace('"blockAh": 280', `"blockAh": ${ah}`);
  for (const ah of ["NaN", "Infinity", "-", "0x10", "1_000", "280,5"])
    expect(problemsOf(withAh(ah))[0]).toMatchObject({ code: "not-json" });
  for (const ah of ["1e308", "1e999", "-0.0001", '"280"', "null"]) {
    const [problem] = problemsOf(withAh(ah));
    expect(problem).toMatchObject({ code: "not-allowed", path: ["bank", "blockAh"] });
    expect(problem!.message).toContain("from 1 to 3000 Ah");
  }
});

test("a document of 10 MB is refused at once, and says what it may be", () => {
  const [problem, ...more] = problemsOf(`{"a":"${"x".repeat(10_000_000)}"}`);
  expect(more).toEqual([]);
  expect(problem!.code).toBe("too-long");
  expect(problem!.message).toMatch(/10\.0 million characters.*at most 1 million.*weather file\?/);
});

test("a newer version and another document are refused by name", () => {
  expect(problemsOf(changed("walnut-grove", [{ at: "version", to: 2 }]))).toMatchObject([{ code: "newer-version" }]);
  expect(problemsOf(changed("walnut-grove", [{ at: "format", to: "notebook" }]))).toMatchObject([{ path: ["format"] }]);
});

describe("times", () => {
  const times = (start: string, end: string, zone = "Europe/Vienna") =>
    problemsOf(
      changed("walnut-grove", [
        { at: "time.start", to: start },
        { at: "time.end", to: end },
        { at: "place.zone", to: zone },
      ]),
    );

  test("an end before the start is refused", () => {
    for (const end of ["2026-10-08T10:00", "2026-10-08T09:59", "2025-10-11T10:00"]) {
      const [problem] = times("2026-10-08T10:00", end);
      expect(problem).toMatchObject({ code: "end-before-start", path: ["time", "end"] });
      expect(problem!.message).toContain(end);
      expect(problem!.message).toContain("2026-10-08T10:00");
    }
  });

  test("an event over 60 days is refused with the reason; 60 days are not", () => {
    const [problem] = times("2026-06-01T00:00", "2026-08-01T00:00");
    expect(problem!.message).toMatch(/61 days.*at most 60 days.*because.*shorten the event or split it/);
    expect(times("2026-06-01T00:00", "2026-07-31T00:00")).toEqual([]);
  });

  test("an hour that the clocks skip is refused, and the hour that comes twice is read", () => {
    const [problem] = times("2026-03-29T02:30", "2026-03-30T10:00");
    expect(problem).toMatchObject({ code: "skipped-hour", path: ["time", "start"] });
    expect(problem!.message).toMatch(/2026-03-29T02:30.*Europe\/Vienna/);
    expect(times("2026-03-28T10:00", "2026-03-29T02:30")).toMatchObject([{ path: ["time", "end"] }]);
    expect(times("2026-10-24T10:00", "2026-10-25T02:30")).toEqual([]);
  });

  test("dates that no calendar has and words for times are refused", () => {
    for (const start of ["2026-02-30T10:00", "2026-13-01T10:00", "2026-06-01T25:00"])
      expect(times(start, "2026-10-11T16:00")).toMatchObject([{ code: "no-such-date" }]);
    for (const start of ["tomorrow", "2026-06-01", "2026-06-01T10:00Z", "2026-06-01 10:00", ""])
      expect(times(start, "2026-10-11T16:00")).toMatchObject([{ code: "not-allowed", path: ["time", "start"] }]);
  });

  test("a zone that nobody keeps is refused", () => {
    for (const zone of ["Middle/Earth", "+01:00", "", "CEST", "europe"]) {
      const [problem] = times("2026-10-08T10:00", "2026-10-11T16:00", zone);
      expect(problem, zone).toMatchObject({ path: ["place", "zone"] });
      expect(problem!.message).toMatch(/IANA/);
    }
  });
});

describe("parts that do not fit one another", () => {
  const cases: [what: string, changes: Parameters<typeof changed>[1], code: string, says: RegExp][] = [
    [
      "a panel inside a trunk",
      [
        { at: "obstacles.old-walnut.eastM", to: 0.1 },
        { at: "obstacles.old-walnut.northM", to: 0.1 },
      ],
      "panel-inside",
      /panels\.roof.*trunk of old walnut; move/,
    ],
    ["a panel inside a box", [{ at: "obstacles.barn.eastM", to: 0 }], "panel-inside", /panels\.roof.*hay barn; move/],
    ["two of one id", [{ at: "gear.fan.id", to: "router" }], "repeated-id", /gear.*"router"/],
    [
      "gear at a station that is not there",
      [{ at: "gear.logger.use", to: { when: "whenStaffed", station: "cw" } }],
      "no-such-station",
      /"cw".*hf-run, hf-data, vhf/,
    ],
    [
      "an input that is not there",
      [{ at: "selector", to: { mode: "either", inputs: ["solar", "wind"] } }],
      "no-such-input",
      /"wind".*solar, roof/,
    ],
    ["24 V without a converter", [{ at: "bank.nominalV", to: 24 }], "no-converter", /24 V.*converter/],
    [
      "fewer words than days",
      [{ at: "weather", to: { kind: "words", days: ["clear", "mixed"] } }],
      "too-few-days",
      /2 words.*4 days.*2026-10-08 to 2026-10-11/,
    ],
    ["more power than the radio has", [{ at: "stations.vhf.transmitW", to: 80 }], "contradiction", /80 W.*50 W/],
    [
      "modes that do not add up",
      [{ at: "stations.hf-run.modes", to: [{ mode: "ssb", share: 0.5 }] }],
      "contradiction",
      /add up to 0\.5/,
    ],
    ["strings that do not divide", [{ at: "panels.roof.inSeries", to: 3 }], "contradiction", /2 modules.*strings of 3/],
    [
      "a curve that runs nowhere",
      [
        {
          at: "bank.openCircuitCurve",
          to: [
            { share: 1, cellV: 3 },
            { share: 0, cellV: 3 },
          ],
        },
      ],
      "contradiction",
      /from share 0 to share 1/,
    ],
    [
      "aims out of order",
      [{ at: "panels.roof.mount", to: { kind: "aimed", aims: [{ at: "14:00" }, { at: "10:00" }] } }],
      "contradiction",
      /10:00 does not come after 14:00/,
    ],
  ];
  test.each(cases)("%s", (_, changes, code, says) => {
    const problems = problemsOf(changed("walnut-grove", changes));
    expect(problems.map((problem) => problem.code)).toContain(code);
    const own = problems.find((problem) => problem.code === code)!;
    expectSentence(own);
    expect(own.message).toMatch(says);
  });

  test("a variant that is not there, or whose place is not there, is named", () => {
    const missing = readVariant(example("walnut-grove"), "moon");
    expect(missing).toMatchObject({ ok: false, problems: [{ code: "no-such-variant" }] });
    expect(!missing.ok && missing.problems[0]!.message).toMatch(/"moon" \(meadow, one-station, two-blocks\)/);
    const nowhere = changed("walnut-grove", [
      { at: "variants.meadow.changes", to: [{ at: "panels.barn.count", to: 1 }] },
    ]);
    const result = readVariant(nowhere, "meadow");
    expect(!result.ok && result.problems[0]!.message).toMatch(/panels\.barn\.count.*"barn"/);
  });

  test("a change cannot reach into what every object inherits", () => {
    for (const at of ["__proto__.polluted", "constructor.prototype.polluted", "bank.__proto__"]) {
      expect(applyChanges(example("walnut-grove"), [{ at, to: true }])).toMatchObject({ ok: false });
    }
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });
});

describe("weather files", () => {
  const HEAD =
    "# latitude: 46.95\n# longitude: 15.6\n# elevation: 300\n# utcOffset: 1\ntime,ghi,dni,dhi,temp_c,wind_ms\n";
  const hour = (h: number) => {
    const time = new Date(Date.UTC(2026, 9, 8, h)).toISOString().slice(0, 16);
    return `${time},${h % 24 > 6 && h % 24 < 18 ? 300 : 0},0,${h % 24 > 6 && h % 24 < 18 ? 300 : 0},12,1`;
  };
  const lines = Array.from({ length: 24 * 5 }, (_, h) => hour(h));
  const read = (text: string) => readWeatherFile(text, "grove.csv");
  const saysOf = (text: string) => {
    const result = read(text);
    return result.ok ? [] : result.problems.map((problem) => problem.message);
  };
  const scenario = (changes: Parameters<typeof changed>[1] = []): Scenario => {
    const result = readScenario(
      changed("walnut-grove", [{ at: "weather", to: { kind: "file", file: "grove.csv" } }, ...changes]),
    );
    if (!result.ok) throw new Error(result.problems[0]!.message);
    return result.scenario;
  };

  test("a whole one runs without NaN", () => {
    const weather = read(HEAD + lines.join("\n"));
    if (!weather.ok) throw new Error(weather.problems[0]!.message);
    const result = trace(scenario(), { climate, weatherFile: weather.file });
    expect(result).toMatchObject({ ok: true });
    expect(result.ok && wrongNumbers(traceJson(result.trace))).toEqual([]);
  });

  test.each([
    ["cut short in a line", `${HEAD}${lines.slice(0, 9).join("\n")}\n2026-10-08T09:00,30`, /Line 15 has 2 values.*6/],
    ["with a wrong column", `${HEAD.replace("ghi", "glo")}${lines.join("\n")}`, /no column "ghi" \(found: time, glo/],
    ["with semicolons", "time;ghi\n2026-10-08T09:00;30", /commas.*not semicolons/],
    ["with a gap", HEAD + lines.filter((_, h) => h !== 30).join("\n"), /line 36 there is a gap: 2026-10-09 06:00/],
    [
      "with an hour twice",
      HEAD + [...lines.slice(0, 9), lines[8], ...lines.slice(9)].join("\n"),
      /Line 15.*again.*line 14/,
    ],
    [
      "with a word for a number",
      HEAD + [...lines.slice(0, 9), lines[9]!.replace("300", "sunny")].join("\n"),
      /GHI is "sunny"/,
    ],
    [
      "with too much sun",
      HEAD + [...lines.slice(0, 9), lines[9]!.replace("300", "3000")].join("\n"),
      /GHI is 3000 W\/m².*0 to 1500/,
    ],
    ["with no clock", `time,ghi\n2026-10-08T09:00,30`, /no offset from UTC.*utcOffset/],
    ["that is empty", " \n", /empty/],
    ["that is a picture", "\u0089PNG\r\n\u001a\n\u0000\u0000", /time|GHI|column/],
    ["of 10 MB and more", "x".repeat(10_000_001), /10\.0 MB.*at most 10 MB/],
  ])("one %s is refused with a sentence", (_, text, says) => {
    const messages = saysOf(text);
    expect(messages.length).toBeGreaterThan(0);
    expect(
      messages.some((message) => says.test(message)),
      messages.join("\n"),
    ).toBe(true);
    for (const message of messages) expect(message).toMatch(/[.?]$/);
    for (const message of messages) expect(message).not.toMatch(WORDS_OF_A_MACHINE);
  });

  test("thousands of wrong lines are counted and not listed", () => {
    const messages = saysOf(HEAD + lines.map((line) => line.replace(/,300,/, ",x,")).join("\n"));
    expect(messages).toHaveLength(51);
    expect(messages.at(-1)).toMatch(/^There are 5 more problems/);
  });

  test("one for a far place says how far, and may be allowed", () => {
    const weather = read(HEAD.replace("15.6", "7.45") + lines.join("\n"));
    if (!weather.ok) throw new Error(weather.problems[0]!.message);
    const result = trace(scenario(), { climate, weatherFile: weather.file });
    // A degree of longitude on the 47th parallel is 75.9 km (sphere of 6371 km, worked out by hand), and 8.17 of them lie between.
    const message = result.ok ? "" : result.problems[0]!.message;
    const km = Number(/place (\d+) km from/.exec(message)?.[1]);
    expect(km).toBeGreaterThan(615);
    expect(km).toBeLessThan(625);
    expect(message).toMatch(/at most 150 km allowed.*maxDistanceKm/);
    const allowed = scenario([{ at: "weather.maxDistanceKm", to: 700 }]);
    expect(trace(allowed, { climate, weatherFile: weather.file })).toMatchObject({ ok: true });
  });

  test("one that does not reach the event's end says what it holds and what is wanted", () => {
    const weather = read(HEAD + lines.slice(0, 60).join("\n"));
    if (!weather.ok) throw new Error(weather.problems[0]!.message);
    const result = trace(scenario(), { climate, weatherFile: weather.file });
    expect(!result.ok && result.problems[0]!.message).toMatch(/2026-10-08 to 2026-10-10.*no weather for 2026-10-10/);
  });

  test("one that was not given along, and climate tables that were not, are asked for", () => {
    const noFile = trace(scenario(), { climate });
    expect(!noFile.ok && noFile.problems[0]!.message).toMatch(/grove\.csv.*put it beside/);
    const typical = readScenario(example("walnut-grove"));
    const noClimate = trace((typical as { scenario: Scenario }).scenario);
    expect(!noClimate.ok && noClimate.problems[0]!.message).toMatch(/climate tables.*type in/);
  });
});

describe("where the sun does not rise or set", () => {
  const kinds = ["clear", "typical", "words"];
  const at = (latitudeDeg: number, start: string, end: string, kind: string) => {
    const weather = kind === "words" ? { kind, days: ["clear", "mixed", "overcast", "fair"] } : { kind };
    const result = readScenario(
      changed("walnut-grove", [
        { at: "place", to: { name: "Ice", latitudeDeg, longitudeDeg: 15, elevationM: 10, zone: "UTC" } },
        { at: "time", to: { start, end, stepMinutes: 30 } },
        { at: "weather", to: { ...weather, air: { maxC: -5, minC: -15 } } },
      ]),
    );
    if (!result.ok) throw new Error(result.problems[0]!.message);
    return result.scenario;
  };

  test.each(
    [90, 84, 78, 69, -58, -77, -90].flatMap((latitudeDeg) => kinds.map((kind) => [latitudeDeg, kind] as const)),
  )("%d° with %s weather runs at both solstices and an equinox without NaN", (latitudeDeg, kind) => {
    // The climate tables end at 58.5° south: there, typical weather is a problem in words and not a number.
    if (latitudeDeg < -58.5 && kind === "typical") {
      const result = trace(at(latitudeDeg, "2026-12-20T00:00", "2026-12-22T00:00", kind), { climate });
      expect(!result.ok && result.problems[0]!.message).toMatch(/58\.5° south; type in/);
      return;
    }
    for (const month of ["03", "06", "12"])
      expectFinite(
        at(latitudeDeg, `2026-${month}-19T12:00`, `2026-${month}-22T12:00`, kind),
        `${latitudeDeg}° ${month}`,
      );
  });

  test("polar night gives no energy and polar day gives some in every hour", () => {
    const night = trace(at(78, "2026-12-20T00:00", "2026-12-22T00:00", "clear"), { climate });
    expect(night.ok && night.trace.days.map((day) => day.solarWh)).toEqual([0, 0]);
    expect(night.ok && night.trace.days.map((day) => [day.sunriseMs, day.sunsetMs])).toEqual([
      [null, null],
      [null, null],
    ]);
    const day = trace(at(78, "2026-06-20T00:00", "2026-06-22T00:00", "clear"), { climate });
    expect(day.ok && Math.min(...day.trace.prepared.light.ghiWm2)).toBeGreaterThan(50);
    expect(day.ok && day.trace.prepared.nights).toEqual([]);
  });
});

test("the sampler gives something for every kind the schema knows", () => {
  expect(sample({ type: "boolean" })).toBe(true);
  expect(() => sample({ type: "string", pattern: "^never$" })).toThrow("knows no text");
});
