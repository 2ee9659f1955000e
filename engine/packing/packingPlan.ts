import type { Change } from "../scenario/change.ts";
import type { Problem } from "../scenario/problem.ts";
import { readScenario } from "../scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import { bankOptions, MOST_BANKS } from "./bankOptions.ts";
import type { LeftOut } from "./leftOut.ts";
import type { OwnedThing } from "./ownedThing.ts";
import { choicesIn, choicesOf, type PackingSpace } from "./packingSpace.ts";
import { panelSlots } from "./panelSlots.ts";
import { type Choosable, setChanges } from "./setChanges.ts";
import { sourceSlots } from "./sourceSlots.ts";

/** Sets that are looked at, at most. */
const MOST_SETS = 200_000;

/** A plan with everything that can be packed for it. */
export interface PackingPlan {
  readonly document: ScenarioInput;
  readonly scenario: Scenario;
  readonly things: readonly OwnedThing[];
  readonly space: PackingSpace;
  readonly sizes: readonly number[];
  /** Numbers of the sets that the list has things enough for, in order. */
  readonly keys: readonly number[];
  /** Pieces of each thing that a set takes. */
  readonly takeOf: (key: number) => number[];
  /** What a set changes about the plan. */
  readonly changesOf: (key: number) => Change[];
  /** Things that no set takes, and why. */
  readonly leftOut: readonly LeftOut[];
}

type Ready = { ok: true; plan: PackingPlan } | { ok: false; problems: readonly Problem[] };

/**
 * Finds everything that can be packed for a plan.
 * @param others documents of other plans: where their panels stand, the club's panels can stand too, as can those of the plan's own variants
 */
export function packingPlan(
  document: ScenarioInput,
  others: readonly ScenarioInput[],
  things: readonly OwnedThing[],
): Ready {
  const read = readScenario(document);
  if (!read.ok) return read;
  const { scenario } = read;
  const leftOut: LeftOut[] = [];
  const banks = bankOptions(document, scenario, things, leftOut);
  if (banks === null) return tooMany("batteries make up more than", MOST_BANKS, "banks");
  const panels = panelSlots(document, scenario, others, things, leftOut);
  const sources = sourceSlots(document, scenario, others, things, leftOut);
  const at = (list: readonly { readonly id: string }[], id: string | null) => {
    const place = list.findIndex((each) => each.id === id);
    return place < 0 ? null : place;
  };
  const space: PackingSpace = {
    base: scenario,
    banks: banks.map(({ bank }) => bank),
    panels: panels.map(({ options, inPlan }) => ({
      at: at(scenario.panels, inPlan),
      groups: options.map(({ group }) => group),
    })),
    sources: sources.map(({ options, inPlan }) => ({
      at: at(scenario.sources, inPlan),
      sources: options.map((option) => option.sources),
    })),
  };
  const sizes = choicesIn(space);
  const all = sizes.reduce((product, size) => product * size, 1);
  if (all > MOST_SETS)
    return tooMany(`things can be packed in ${all.toLocaleString("en")} ways, and at most`, MOST_SETS, "are run");
  const chosen = { banks, panels, sources };
  const takeOf = (key: number) => pieces(choicesOf(key, sizes), chosen, things);
  const keys = Array.from({ length: all }, (_, key) => key).filter((key) =>
    takeOf(key).every((count, t) => count <= things[t]!.count),
  );
  const changesOf = (key: number) => setChanges(choicesOf(key, sizes), chosen, document, scenario);
  return { ok: true, plan: { document, scenario, things, space, sizes, keys, takeOf, changesOf, leftOut } };
}

function tooMany(what: string, most: number, of: string): Ready {
  const message = `owned: its ${what} ${most.toLocaleString("en")} ${of}; set what is sure to stay at home to 0.`;
  return { ok: false, problems: [{ code: "too-many-sets", path: ["owned"], message }] };
}

function pieces(choices: readonly number[], { banks, panels, sources }: Choosable, things: readonly OwnedThing[]) {
  const take = things.map(() => 0);
  const add = (thing: OwnedThing | null) => {
    if (thing !== null) take[things.indexOf(thing)]!++;
  };
  for (const [thing, count] of banks[choices[0]!]!.pieces) take[thing]! += count;
  panels.forEach(({ thing, options }, k) => {
    const { count, lead, controller } = options[choices[1 + k]!]!;
    take[thing]! += count;
    add(lead);
    add(controller);
  });
  sources.forEach(({ thing, options }, k) => {
    take[thing]! += options[choices[1 + panels.length + k]!]!.count;
  });
  return take;
}
