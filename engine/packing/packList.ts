import type { Scenario } from "../scenario/scenario.ts";
import type { OwnedThing } from "./ownedThing.ts";
import { isCarried } from "./packedPanels.ts";
import type { PackingPlan } from "./packingPlan.ts";
import type { PackedSet, PackingReport } from "./packingReport.ts";
import { thingPrice } from "./thingPrice.ts";

/** A line of the list to print. */
export interface PackLine {
  readonly name: string;
  readonly count: number;
  /** Of all of them; null where nobody says. */
  readonly massKg: number | null;
  /** Whether that is what such things usually weigh. */
  readonly isTypical: boolean;
  readonly who: string | null;
}

/** A list to print and to tick. Plain data. */
export interface PackList {
  readonly sections: readonly { readonly title: string; readonly lines: readonly PackLine[] }[];
  /** What is stated or usual, summed, and of how many lines it is neither. */
  readonly massKg: number;
  readonly notStated: number;
  readonly home: readonly {
    readonly name: string;
    readonly count: number;
    readonly massKg: number | null;
    readonly who: string | null;
    readonly why: string;
  }[];
  /** Names of what two people lift. */
  readonly heavy: readonly string[];
}

/**
 * Mass from which on two people lift a thing: the load constant of the revised lifting equation, 23 kg (Waters, Putz-Anderson, Garg & Fine,
 * Ergonomics 36 (1993) 749–776; from memory).
 */
const TWO_LIFT_KG = 23;

/** What of a plan is there in any case: groups on a roof, and what the list says nothing of. */
export function fittedNames(plan: PackingPlan): string[] {
  const { scenario, things, space } = plan;
  const stays = (list: readonly { readonly name: string }[], slots: readonly { readonly at: number | null }[]) =>
    list.filter((_, k) => slots.every(({ at }) => at !== k)).map(({ name }) => name);
  const hasBatteries = things.some(({ kind, count }) => kind === "battery" && count > 0);
  const bank = hasBatteries ? [] : [scenario.bank.name ?? `Bank, ${scenario.bank.blockAh} Ah`];
  return [...bank, ...stays(scenario.panels, space.panels), ...stays(scenario.sources, space.sources)];
}

/** The list for what is proposed: all that comes along, by where it belongs, and what stays at home. Null where nothing is proposed. */
export function packList(plan: PackingPlan, report: PackingReport): PackList | null {
  const { proposed } = report;
  if (proposed === null) return null;
  const { scenario, things } = plan;
  const of = (...kinds: readonly OwnedThing["kind"][]) =>
    things.flatMap((thing, t) =>
      kinds.includes(thing.kind) && proposed.take[t]! > 0 ? [lineOf(thing, proposed, t)] : [],
    );
  const all = [
    { title: "Bank", lines: [...of("battery"), ...bankLines(plan)] },
    { title: "Sun", lines: [...of("panel", "lead", "controller"), ...panelLines(plan)] },
    { title: "Other charging", lines: [...of("generator"), ...sourceLines(plan)] },
    { title: "Stations", lines: scenario.stations.map(stationLine) },
    { title: "Camp", lines: [...gearLines(scenario), unweighed("Fire extinguisher and insulated spanner", 1)] },
  ];
  const sections = all.filter(({ lines }) => lines.length > 0);
  const lines = sections.flatMap((section) => section.lines);
  const heavy = things.filter((thing, t) => proposed.take[t]! > 0 && (thingPrice(thing).mass ?? 0) >= TWO_LIFT_KG);
  return {
    sections,
    massKg: Number(lines.reduce((sum, { massKg }) => sum + (massKg ?? 0), 0).toFixed(3)),
    notStated: lines.filter(({ massKg }) => massKg === null).length,
    home: homeLines(plan, proposed),
    heavy: heavy.map(({ name }) => name),
  };
}

const unweighed = (name: string, count: number): PackLine => ({
  name,
  count,
  massKg: null,
  isTypical: false,
  who: null,
});

function lineOf(thing: OwnedThing, { take }: PackedSet, t: number): PackLine {
  const count = take[t]!;
  const { mass, isTypical } = thingPrice(thing);
  const massKg = mass === null ? null : Number((mass * count).toFixed(3));
  return { name: thing.name, count, massKg, isTypical, who: thing.who ?? null };
}

function bankLines({ scenario, things }: PackingPlan): PackLine[] {
  const { bank, mainFeed } = scenario;
  const fuse = mainFeed?.fuseA === undefined ? [] : [unweighed(`Main fuse, ${mainFeed.fuseA} A, and a spare`, 2)];
  if (things.some(({ kind, count }) => kind === "battery" && count > 0)) return fuse;
  const blocks = bank.inSeries * bank.inParallel;
  const massKg = bank.bring?.massKg === undefined ? null : blocks * bank.bring.massKg;
  return [{ ...unweighed(bank.name ?? `Battery, ${bank.blockAh} Ah`, blocks), massKg }, ...fuse];
}

/** Panels that are carried out and that the list says nothing of. */
function panelLines({ scenario, space }: PackingPlan): PackLine[] {
  return scenario.panels
    .filter((group, k) => isCarried(group) && group.count > 0 && space.panels.every(({ at }) => at !== k))
    .map(({ name, count, bring }) => ({
      ...unweighed(name, count),
      massKg: bring?.massKg === undefined ? null : count * bring.massKg,
    }));
}

/** Other charging that the list says nothing of; mains is not brought along. */
function sourceLines({ scenario, space }: PackingPlan): PackLine[] {
  return scenario.sources
    .filter(({ kind }, k) => kind === "generator" && space.sources.every(({ at }) => at !== k))
    .map(({ name, bring }) => ({ ...unweighed(name, 1), massKg: bring?.massKg ?? null }));
}

function stationLine({ name, companions }: Scenario["stations"][number]): PackLine {
  const parts = ["radio", ...companions.map((companion) => companion.name)];
  return unweighed(`${name}: ${parts.join(", ")}`, 1);
}

const gearLines = ({ gear }: Scenario) =>
  gear.filter(({ count }) => count > 0).map(({ name, count }) => unweighed(name, count));

function homeLines({ things, leftOut }: PackingPlan, { take, holds }: PackedSet): PackList["home"] {
  return things.flatMap((thing, t) => {
    const count = thing.count - take[t]!;
    if (count <= 0) return [];
    const { mass } = thingPrice(thing);
    const why = leftOut.find((each) => each.thing === t)?.why;
    const share =
      holds === null ? "" : `: ${Math.floor(100 * holds.share)} of 100 without ${count > 1 ? "them" : "it"}`;
    return [
      {
        name: thing.name,
        count,
        massKg: mass === null ? null : Number((mass * count).toFixed(3)),
        who: thing.who ?? null,
        why: why ?? `not needed${share}`,
      },
    ];
  });
}
