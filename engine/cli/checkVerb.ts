import { localMoment } from "../run/localClock.ts";
import { openPrepared } from "./openScenario.ts";
import type { Verb } from "./verb.ts";

export const checkVerb: Verb = {
  name: "check",
  usage: "check SCENARIO [--variant ID] [--json]",
  purpose: "Reads a scenario and its variants and says everything that is wrong, without running it.",
  options: { json: { type: "boolean", help: "print the problems as JSON" } },
  run: async ({ scenario, variant, values, context, print }) => {
    const opened = await openPrepared(scenario, variant, context);
    const variants = variant === undefined && opened.ok ? opened.value.scenario.variants : [];
    const problems = opened.ok ? [] : [...opened.problems];
    for (const each of variants) {
      const checked = await openPrepared(scenario, each.id, context);
      if (checked.ok) continue;
      problems.push(
        ...checked.problems.map((problem) => ({ ...problem, message: `Variant ${each.id}: ${problem.message}` })),
      );
    }
    if (values.json === true) {
      print(JSON.stringify({ format: "duskline-check", version: 1, ok: problems.length === 0, problems }));
      return problems.length === 0 ? { ok: true } : { ok: false, problems: [] };
    }
    if (!opened.ok || problems.length > 0) return { ok: false, problems };
    const { grid, scenario: read } = opened.value;
    const from = localMoment(grid, grid.startMs).words;
    const to = localMoment(grid, grid.startMs + grid.steps * grid.stepMs).words;
    const also =
      variants.length > 0 ? ` Its variants (${variants.map((each) => each.id).join(", ")}) are right as well.` : "";
    print(
      `${read.name} is right: ${from} to ${to} (${grid.zone}), ${grid.steps} steps of ${read.time.stepMinutes} min.${also}`,
    );
    return { ok: true };
  },
};
