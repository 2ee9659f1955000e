import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { trace } from "../../engine/run/trace.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { bitsOf } from "../bitsOf.ts";

/**
 * What each example comes to, to the last bit: its trace, and the counts and outcomes of 300 members. Moving code moves none of these; physics
 * that changes on purpose writes its new bits here, with the reason in the commit and the figures under *Results that move*.
 */
const PINNED: Record<string, { readonly trace: string; readonly members: string }> = {
  "walnut-grove": { trace: "fc6f984df443161d", members: "22d701963f020dbe" },
  "peat-moor": { trace: "b5a61bb951f99b11", members: "e00247ed2b0fa245" },
  "polar-hut": { trace: "62a6f2f80f575cde", members: "1605bb637054de2b" },
};

/** One fingerprint for all. */
const joined = (value: unknown) => {
  const text = Object.entries(bitsOf(value))
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flat()
    .join(" ");
  return Object.values(bitsOf(new TextEncoder().encode(text)))[0]!;
};

test.each(Object.keys(PINNED))("%s comes to the same bits as before", async (name) => {
  const climate = await loadClimateTables();
  const read = readScenario(readFileSync(`scenarios/${name}.json`, "utf8"));
  if (!read.ok) throw new Error(`${name} does not read`);
  const run = trace(read.scenario, { climate });
  const ready = prepareEnsemble(read.scenario, { climate }, "pinned");
  if (!run.ok || !ready.ok) throw new Error(`${name} cannot be prepared`);
  const { record, days } = run.trace;
  // Where a radio's volts went is worked out of the rest, and has a test of its own.
  const verdict = { ...run.trace.verdict, radios: run.trace.verdict.radios.map(({ lost: _, ...radio }) => radio) };
  const part = runMembers(ready.ensemble, 0, 300);
  expect({ trace: joined({ record, days, verdict }), members: joined(part) }).toEqual(PINNED[name]);
});
