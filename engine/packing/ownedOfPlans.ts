import type { ScenarioInput } from "../scenario/scenario.ts";
import { knownParts } from "./knownParts.ts";
import type { OwnedThing } from "./ownedThing.ts";
import { isCarried } from "./packedPanels.ts";

/**
 * What plans hold that can be packed, as a list: the bank's batteries, panels that are carried out, generators. Taken to be at hand.
 * @param documents the plan, then others
 */
export function ownedOfPlans(documents: readonly ScenarioInput[]): OwnedThing[] {
  const [plan, ...others] = documents;
  if (plan === undefined) return [];
  const things: OwnedThing[] = [];
  const bring = (of: unknown) => {
    const { massKg, setupMinutes } = ((of as { bring?: object }).bring ?? {}) as {
      massKg?: number;
      setupMinutes?: number;
    };
    return { ...(massKg === undefined ? {} : { massKg }), ...(setupMinutes === undefined ? {} : { setupMinutes }) };
  };
  const banks = [plan, ...others].map(({ bank }) => bank);
  for (const bank of banks) {
    const inSeries = bank.inSeries ?? 1;
    const blockV = ((bank.nominalV ?? 12) / inSeries) as NonNullable<OwnedThing["blockV"]>;
    const count = inSeries * (bank.inParallel ?? 1);
    const before = things.findIndex(
      (each) => each.chemistry === bank.chemistry && each.blockAh === bank.blockAh && each.blockV === blockV,
    );
    const name = `Battery, ${bank.blockAh} Ah`;
    const { chemistry, blockAh } = bank;
    const thing = { kind: "battery", name, count, chemistry, blockAh, blockV, ...bring(bank) } as const;
    if (before < 0) things.push({ ...thing, id: `battery-${things.length + 1}` });
    else if (things[before]!.count < count) things[before] = { ...things[before]!, count };
  }
  for (const group of knownParts(plan, others, "panels")) {
    const { ratedW } = (group.module ?? {}) as { ratedW?: number };
    const count = group.count as number;
    if (!isCarried(group) || ratedW === undefined || !(count > 0)) continue;
    const name = String(group.name).slice(0, 80);
    things.push({
      id: `panel-${group.id}`.slice(0, 40),
      kind: "panel",
      name,
      count,
      ratedW,
      as: group.id,
      ...bring(group),
    });
  }
  for (const source of knownParts(plan, others, "sources")) {
    if (source.kind !== "generator") continue;
    const { chargerA, fuelL, continuousW } = source as unknown as Record<string, number>;
    const name = String(source.name).slice(0, 80);
    const figures = { chargerA: chargerA!, fuelL: fuelL!, continuousW: continuousW! };
    const id = `generator-${source.id}`.slice(0, 40);
    things.push({ id, kind: "generator", name, count: 1, as: source.id, ...figures, ...bring(source) });
  }
  return things;
}
