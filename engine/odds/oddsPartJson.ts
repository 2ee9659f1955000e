import type { Problem } from "../scenario/problem.ts";
import type { MemberOutcomes, OddsPart } from "./oddsPart.ts";

/** Names the file of a part of an ensemble. */
const FORMAT = "duskline-odds-part";

/** A part as plain JSON, to be kept and merged later. @param scenario what it belongs to, to tell parts of others apart */
export function oddsPartJson(part: OddsPart, scenario: string): unknown {
  const { outcomes, ...rest } = part;
  const plain = Object.fromEntries(
    Object.entries(rest).map(([name, value]) => [
      name,
      typeof value === "object" ? Array.from(value as ArrayLike<number>) : value,
    ]),
  );
  const columns = Object.fromEntries(
    Object.entries(outcomes).map(([name, values]) => [name, Array.from(values as Float64Array)]),
  );
  return { format: FORMAT, version: 1, scenario, ...plain, outcomes: columns };
}

/** Reads a part that `oddsPartJson` wrote. */
export function readOddsPart(
  json: unknown,
  scenario: string,
): { ok: true; part: OddsPart } | { ok: false; problems: Problem[] } {
  const refused = (message: string) => ({
    ok: false as const,
    problems: [{ code: "no-odds-part", path: [], message }],
  });
  const raw = json as Record<string, unknown>;
  if (typeof json !== "object" || json === null || raw.format !== FORMAT || raw.version !== 1) {
    return refused(
      "The file is no part of an ensemble (its format is not duskline-odds-part, version 1); write one with odds --part FILE.",
    );
  }
  if (raw.scenario !== scenario) {
    return refused(
      `The part is of "${String(raw.scenario)}" and not of "${scenario}"; only parts of one scenario can be put together.`,
    );
  }
  const numbers = (value: unknown) =>
    Array.isArray(value) && value.every((each) => typeof each === "number") ? value : null;
  const counts = ["chargeCounts", "solarCounts", "loadCounts", "belowCounts", "darkCounts"] as const;
  const outcomes = Object.entries((raw.outcomes ?? {}) as object);
  const isWhole = counts.every((name) => numbers(raw[name]) !== null) && numbers(raw.unservedMilliWh) !== null;
  if (!isWhole || outcomes.length === 0 || outcomes.some(([, values]) => numbers(values) === null)) {
    return refused("The part is damaged: a list of numbers is missing or holds something else; run its members again.");
  }
  const part = {
    ...Object.fromEntries(counts.map((name) => [name, Uint32Array.from(raw[name] as number[])])),
    seed: String(raw.seed),
    from: Number(raw.from),
    to: Number(raw.to),
    steps: Number(raw.steps),
    unservedMilliWh: Float64Array.from(raw.unservedMilliWh as number[]),
    outcomes: Object.fromEntries(
      outcomes.map(([name, values]) => [name, Float64Array.from(values as number[])]),
    ) as unknown as MemberOutcomes,
  } as OddsPart;
  return { ok: true, part };
}
