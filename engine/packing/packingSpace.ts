import type { Bank } from "../scenario/bank.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { Source } from "../scenario/source.ts";

/** Panels of one kind: where they stand among the plan's groups (null: after them), and every way to set them up. */
export interface PanelSlot {
  readonly at: number | null;
  readonly groups: readonly (PanelGroup | null)[];
}

/** Generators of one kind, likewise. */
export interface SourceSlot {
  readonly at: number | null;
  readonly sources: readonly (readonly Source[])[];
}

/** Everything that can be packed for a plan, as workers need it. Plain data. */
export interface PackingSpace {
  readonly base: Scenario;
  readonly banks: readonly Bank[];
  readonly panels: readonly PanelSlot[];
  readonly sources: readonly SourceSlot[];
}

/** Ways to choose in each place: the banks, then each kind of panels, then each kind of generators. */
export const choicesIn = ({ banks, panels, sources }: PackingSpace): number[] => [
  banks.length,
  ...panels.map(({ groups }) => groups.length),
  ...sources.map((slot) => slot.sources.length),
];

/** A set's choices from its number; the banks go slowest. */
export function choicesOf(key: number, sizes: readonly number[]): number[] {
  const chosen = new Array<number>(sizes.length);
  let left = key;
  for (let k = sizes.length - 1; k >= 0; k--) {
    chosen[k] = left % sizes[k]!;
    left = Math.floor(left / sizes[k]!);
  }
  return chosen;
}

/** A set's number from its choices. */
export function keyOf(chosen: readonly number[], sizes: readonly number[]): number {
  return chosen.reduce((key, choice, k) => key * sizes[k]! + choice, 0);
}

/** The scenario of a set. */
export function scenarioOf({ base, banks, panels, sources }: PackingSpace, chosen: readonly number[]): Scenario {
  const groupOf = (slot: PanelSlot, k: number) => slot.groups[chosen[1 + k]!] ?? null;
  const sourcesOf = (slot: SourceSlot, k: number) => slot.sources[chosen[1 + panels.length + k]!]!;
  return {
    ...base,
    bank: banks[chosen[0]!]!,
    panels: placed(
      base.panels,
      panels.map(({ at }) => at),
      panels.map(groupOf).map((group) => (group === null ? [] : [group])),
    ),
    sources: placed(
      base.sources,
      sources.map(({ at }) => at),
      sources.map(sourcesOf),
    ),
  };
}

/** A list in which what slots stand for gives way to what they bring, at its place; the rest comes after. */
function placed<Thing>(
  list: readonly Thing[],
  places: readonly (number | null)[],
  brought: readonly (readonly Thing[])[],
): Thing[] {
  const inPlace = list.flatMap((thing, at) => {
    const slot = places.indexOf(at);
    return slot < 0 ? [thing] : brought[slot]!;
  });
  return [...inPlace, ...brought.flatMap((things, slot) => (places[slot] === null ? things : []))];
}
