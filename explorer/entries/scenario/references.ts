import type { Change } from "../../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** Lists whose entries are named elsewhere in the document. */
const NAMED = ["gear", "stations", "panels", "sources"];

/** The changes that keep the rest of the document right when an entry is given another short name, or (`to` null) taken out. */
export function referenceChanges(document: ScenarioInput, key: string, from: string, to: string | null): Change[] {
  if (!NAMED.includes(key)) return [];
  const changes: Change[] = [];
  const renamed = (names: readonly string[]) =>
    names.flatMap((name) => (name !== from ? [name] : to === null ? [] : [to]));
  if ((key === "gear" || key === "stations") && document.shedding?.includes(from)) {
    changes.push({ at: "shedding", to: renamed(document.shedding) });
  }
  if (key === "stations") {
    for (const gear of document.gear ?? []) {
      if (gear.use.station !== from) continue;
      changes.push(
        to === null ? { at: `gear.${gear.id}.use.station`, remove: true } : { at: `gear.${gear.id}.use.station`, to },
      );
    }
  }
  const inputs = document.selector?.inputs;
  if ((key === "panels" || key === "sources") && inputs?.includes(from)) {
    const left = renamed(inputs);
    changes.push(left.length < 2 ? { at: "selector.inputs", remove: true } : { at: "selector.inputs", to: left });
  }
  const variants = document.variants ?? [];
  if (to !== null && variants.some((variant) => variant.changes.some(({ at }) => at.startsWith(`${key}.${from}`)))) {
    const moved = variants.map((variant) => ({
      ...variant,
      changes: variant.changes.map((change) => ({
        ...change,
        at:
          change.at === `${key}.${from}` || change.at.startsWith(`${key}.${from}.`)
            ? `${key}.${to}${change.at.slice(key.length + 1 + from.length)}`
            : change.at,
      })),
    }));
    changes.push({ at: "variants", to: moved as never });
  }
  return changes;
}
