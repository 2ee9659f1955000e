import { applyChanges } from "../scenario/applyChanges.ts";
import type { Change } from "../scenario/change.ts";
import { readScenario } from "../scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import type { BankOption } from "./bankOptions.ts";
import type { PanelChoice } from "./panelSlots.ts";
import type { SourceChoice } from "./sourceSlots.ts";

/** Everything that a set is chosen from. */
export interface Choosable {
  readonly banks: readonly BankOption[];
  readonly panels: readonly PanelChoice[];
  readonly sources: readonly SourceChoice[];
}

/** What a set changes about the plan's document. @param choices one for the bank, each kind of panels, each kind of generators */
export function setChanges(
  choices: readonly number[],
  { banks, panels, sources }: Choosable,
  document: ScenarioInput,
  scenario: Scenario,
): Change[] {
  const made: Change[] = [];
  const bank = banks[choices[0]!]!;
  if (bank.bank !== scenario.bank) made.push({ at: "bank", to: bank.written } as Change);
  const same = (list: "panels" | "sources", id: string, now: unknown) =>
    JSON.stringify((document[list] as unknown as readonly { readonly id: string }[]).find((each) => each.id === id)) ===
    JSON.stringify(now);
  const put = (list: "panels" | "sources", inPlan: string | null, brought: readonly { readonly id: string }[]) => {
    brought.forEach((each, k) => {
      if (k > 0 || inPlan === null) made.push({ at: list, add: each } as Change);
      else if (!same(list, inPlan, each)) made.push({ at: `${list}.${inPlan}`, to: each } as Change);
    });
    if (brought.length === 0 && inPlan !== null) made.push(takenOut(document, list, inPlan));
  };
  panels.forEach(({ options, inPlan }, k) => {
    const { written } = options[choices[1 + k]!]!;
    put("panels", inPlan, written === null ? [] : [written]);
  });
  sources.forEach(({ options, inPlan }, k) => {
    put("sources", inPlan, options[choices[1 + panels.length + k]!]!.written);
  });
  return made;
}

/** Taken out of the plan; panels that something else names stay there with none of them set up. */
function takenOut(document: ScenarioInput, list: "panels" | "sources", id: string): Change {
  const out = { at: `${list}.${id}`, remove: true } as Change;
  const changed = applyChanges(document, [out]);
  const isRead = changed.ok && readScenario(changed.document).ok;
  return isRead || list === "sources" ? out : ({ at: `panels.${id}.count`, to: 0 } as Change);
}
