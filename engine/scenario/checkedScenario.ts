import { crossCheck } from "./crossCheck.ts";
import { migrate } from "./migrate.ts";
import { DEEPEST, nestsTooDeep } from "./nestsTooDeep.ts";
import type { Problem } from "./problem.ts";
import { listedProblems } from "./problemList.ts";
import { problemsFrom } from "./problemsFrom.ts";
import { Scenario } from "./scenario.ts";
import { timeGrid } from "./timeGrid.ts";

export type ReadResult = { ok: true; scenario: Scenario } | { ok: false; problems: Problem[] };

/**
 * Checks a parsed document that says its zone, and fills in what else may be left out. `readScenario` does this for any document; this is for
 * documents into which the zone has been written, and brings no table of zones along.
 */
export function checkedScenario(document: unknown): ReadResult {
  if (nestsTooDeep(document)) {
    return refused(
      "too-deep",
      `The document nests groups and lists more than ${DEEPEST} deep, and no scenario does; look for a change in a variant that brings something with itself inside, and take it out.`,
    );
  }
  const current = migrate(document);
  if (!current.ok) return current;
  const parsed = Scenario.safeParse(current.document);
  if (!parsed.success) return { ok: false, problems: problemsFrom(current.document, parsed.error, Scenario) };
  const scenario = parsed.data;
  const { zone } = scenario.place;
  if (zone === undefined) {
    const message =
      'place.zone is missing and could not be looked up; write it, such as "Europe/Oslo", or load the page again.';
    return { ok: false, problems: [{ code: "no-zone", path: ["place", "zone"], message }] };
  }
  const times = timeGrid(scenario.time, zone);
  if (!times.ok) return times;
  const problems = crossCheck(scenario, times.grid);
  return problems.length > 0 ? { ok: false, problems: listedProblems(problems) } : { ok: true, scenario };
}

/** One problem of the document as a whole. */
export function refused(code: string, message: string): ReadResult {
  return { ok: false, problems: [{ code, path: [], message }] };
}
