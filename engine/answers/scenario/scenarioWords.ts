import type { ScenarioInput } from "../../scenario/scenario.ts";
import { figure } from "../../words/numbers.ts";

const list = <Item>(value: readonly Item[] | undefined): readonly Item[] => (Array.isArray(value) ? value : []);

/** A scenario in one line: bank, panels, stations, place. It may be wrong in any field, so nothing in it is trusted. */
export function scenarioWords(document: ScenarioInput): string {
  const { bank, panels, stations, place } = document;
  const blocks = Number(bank?.inParallel ?? 1) * Number(bank?.inSeries ?? 1);
  const bankWords = `${blocks > 1 ? `${figure(blocks)} × ` : ""}${bank?.blockAh ?? "?"} Ah ${bank?.chemistry ?? ""}`;
  const panelWords = list(panels).map((group) => `${group.name}: ${group.count} × ${group.module?.ratedW ?? "?"} W`);
  const count = list(stations).length;
  return [
    bankWords,
    ...(panelWords.length > 0 ? panelWords : ["no panels"]),
    `${count} ${count === 1 ? "station" : "stations"}`,
    place?.name ?? "no place",
  ].join(" · ");
}
