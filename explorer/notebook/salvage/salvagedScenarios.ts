import type * as z from "zod";
import { MOST_CHANGES, MOST_SCENARIOS } from "../../../engine/answers/notebookLimits.ts";
import { ChangedScenario, type Notebook, WholeScenario } from "../../../engine/notebook/notebook.ts";
import { whyMisshapen } from "../../../engine/notebook/whyMisshapen.ts";
import { exampleNotebook } from "../exampleNotebook.ts";
import { cut, type Fields, nameOf, reason, type Salvage, whyLeftOut } from "./damage.ts";

type Scenario = Notebook["scenarios"][number];

/** The scenarios that can be read and whose bases can be; where there are none, a stand-in. */
export function salvagedScenarios(list: readonly unknown[], salvage: Salvage): Scenario[] {
  let read: Scenario[] = [];
  for (const [number, part] of list.entries()) {
    const name = nameOf(part, "Scenario", number);
    const why = whyLeftOut(part, salvage);
    const parsed = why === null ? scenarioFrom(part as Fields, name, salvage) : { ok: false as const, why };
    if (!parsed.ok) salvage.missing.push(`${name} is missing: ${parsed.why}.`);
    else if (read.length >= MOST_SCENARIOS)
      salvage.missing.push(`${name} is missing: a notebook holds ${MOST_SCENARIOS}.`);
    else if (read.some(({ id }) => id === parsed.scenario.id)) {
      salvage.missing.push(`${name} is missing: another has its id ${parsed.scenario.id}.`);
    } else read.push(parsed.scenario);
  }
  // Whatever is based on what is missing goes with it, and so does a ring of scenarios that are based on one another.
  for (const stands = new Set<string>(); ; ) {
    const before = stands.size;
    for (const each of read) if ("document" in each || stands.has(each.basedOn)) stands.add(each.id);
    if (stands.size > before) continue;
    for (const each of read)
      if (!stands.has(each.id)) salvage.missing.push(`Scenario “${each.name}” is missing: so is its base.`);
    read = read.filter(({ id }) => stands.has(id));
    break;
  }
  if (read.length > 0) return read;
  salvage.missing.push(
    "None of its scenarios can be read: the example's plan stands in their place, so that the rest can be shown.",
  );
  // Under an id of its own, so that no entry shows it as what it showed before.
  return [{ ...exampleNotebook("example").scenarios[0]!, id: "a-stand-in", name: "The example's plan, a stand-in" }];
}

function scenarioFrom(
  part: Fields,
  name: string,
  salvage: Salvage,
): { readonly ok: true; readonly scenario: Scenario } | { readonly ok: false; readonly why: string } {
  const named = { ...part, name: cut(part.name) ?? "Unnamed" };
  if (named.name !== part.name) salvage.missing.push(`${name} has not its whole name.`);
  if ("document" in part) {
    const why = whyMisshapen(part.document);
    return why === null ? from(WholeScenario, named) : { ok: false, why: why.replace(/\.$/, "") };
  }
  const { changes } = part;
  if (Array.isArray(changes) && changes.length > MOST_CHANGES) {
    salvage.missing.push(`${name} had ${changes.length} changes; those after ${MOST_CHANGES} are missing.`);
    return from(ChangedScenario, { ...named, changes: changes.slice(0, MOST_CHANGES) });
  }
  return from(ChangedScenario, named);
}

function from(shape: z.ZodType<Scenario>, value: unknown) {
  const parsed = shape.safeParse(value);
  return parsed.success
    ? { ok: true as const, scenario: parsed.data }
    : { ok: false as const, why: reason(parsed.error) };
}
