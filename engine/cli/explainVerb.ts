import { workTrace } from "../answers/run/work.ts";
import { explain } from "../run/explain.ts";
import { clockMoments, clockMsOf } from "../zoneTime.ts";
import { answerBy } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const explainVerb: Verb = {
  name: "explain",
  usage: "explain SCENARIO --at TIME [--variant ID] [--json]",
  purpose:
    "Shows every number on the way at one local time, such as 2026-10-09T12:00, so that it can be followed by hand.",
  options: {
    at: { type: "string", help: "local time of the event, such as 2026-10-09T12:00" },
    json: { type: "boolean", help: "print it as JSON" },
  },
  run: async ({ scenario, variant, values, context, print }) => {
    if (typeof values.at !== "string")
      throw new CallError("explain needs a time: write --at 2026-10-09T12:00, for example.");
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const traced = await answerBy(workTrace, [opened.value], {});
    if (!traced.ok) return traced;
    const { grid } = traced.value.prepared;
    const ms = instant(values.at, grid.zone);
    const endMs = grid.startMs + grid.steps * grid.stepMs;
    if (ms < grid.startMs || ms >= endMs) {
      const times = opened.value.scenario.time;
      throw new CallError(
        `--at ${values.at} lies outside the event, which runs from ${times.start} to ${times.end} (${grid.zone}).`,
      );
    }
    const parts = explain(traced.value, ms);
    if (values.json === true) {
      print(JSON.stringify({ format: "duskline-explanation", version: 1, parts }));
      return { ok: true };
    }
    print(
      parts
        .map((part) =>
          [
            part.title,
            textTable(part.numbers, [
              { head: "  what", cell: (number) => `  ${number.name}`, isWords: true },
              { head: "value", cell: (number) => value(number.value) },
              { head: "", cell: (number) => number.unit, isWords: true },
              { head: "how", cell: (number) => number.how, isWords: true },
            ]),
          ].join("\n"),
        )
        .join("\n\n"),
    );
    return { ok: true };
  },
};

/** Five figures, so that a calculator gets back what is printed below; never an exponent. */
function value(number: number): string {
  if (number === 0) return "0";
  const before = Math.floor(Math.log10(Math.abs(number))) + 1;
  return number.toFixed(Math.max(0, Math.min(7, 5 - before)));
}

function instant(local: string, zone: string): number {
  const clockMs = clockMsOf(local);
  if (clockMs === null)
    throw new CallError(`--at is "${local}", which is no local time; write it as 2026-10-09T12:00.`);
  const { firstMs, lastMs, isSkipped } = clockMoments(zone, clockMs);
  return isSkipped ? lastMs : firstMs;
}
