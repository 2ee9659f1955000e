import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { quietSpans } from "../../engine/ruler/quietSpans.ts";
import { rulerOf } from "../../engine/ruler/rulerOf.ts";
import { quietWords } from "../../engine/ruler/rulerWords.ts";
import { prepare } from "../../engine/run/index.ts";
import { readScenario } from "../../engine/scenario/index.ts";

function spansOf(change: (source: Record<string, unknown>) => unknown) {
  const document = JSON.parse(readFileSync("scenarios/polar-hut.json", "utf8"));
  document.sources = document.sources.map(change);
  document.weather = { kind: "clear", air: { maxC: -5, minC: -15 } };
  document.place.zone = "UTC";
  document.time = { ...document.time, start: "2026-03-02T08:00", end: "2026-03-04T08:00", stepMinutes: 30 };
  const read = readScenario(document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepare(read.scenario);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { grid } = ready.prepared;
  const quiet = quietSpans(ready.prepared);
  const hours = quiet.map(({ startMs, endMs }) => [startMs, endMs].map((ms) => (ms - grid.startMs) / 3_600_000 + 8));
  return { hours, words: quietWords({ ruler: rulerOf(grid.dates, grid.zone), quiet }) };
}

test("a generator is quiet outside the hours in which it may run", () => {
  const { hours, words } = spansOf((source) => ({ ...source, allowed: [{ from: "10:00", to: "19:00" }] }));
  expect(hours).toEqual([
    [8, 10],
    [19, 34],
    [43, 56],
  ]);
  expect(words).toBe("generator quiet 19:00–10:00");
});

test("nobody is told of quiet where there is no generator or it may always run", () => {
  expect(spansOf((source) => ({ ...source, allowed: [{ from: "00:00", to: "24:00" }] })).words).toBeNull();
  const mains = { kind: "mains", id: "m", name: "Mains", chargerA: 10, available: [{ from: "20:00", to: "22:00" }] };
  expect(spansOf(() => mains).hours).toEqual([]);
});
