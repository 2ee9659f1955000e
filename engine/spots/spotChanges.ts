import { panelCableOf } from "../scenario/cable.ts";
import type { Change } from "../scenario/change.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Spot } from "./spotGrid.ts";

/** A panel group as its document has it, defaults left out. */
interface WrittenGroup {
  readonly id: string;
  readonly controller?: { readonly cable?: object };
}

/** The changes that put a group at a spot on a lead that reaches there; of what is there already, none. */
export function spotChanges(
  group: PanelGroup,
  spot: Spot & { readonly leadM: number },
  document: { readonly panels?: readonly unknown[] | undefined },
): Change[] {
  const { id, at, controller } = group;
  const changes: Change[] = [];
  if (spot.eastM !== at.eastM) changes.push({ at: `panels.${id}.at.eastM`, to: spot.eastM });
  if (spot.northM !== at.northM) changes.push({ at: `panels.${id}.at.northM`, to: spot.northM });
  const present = panelCableOf(controller);
  if (Math.abs(spot.leadM - present.oneWayM) < 1e-6) return changes;
  const written = (document.panels ?? []).find((each) => (each as WrittenGroup | null)?.id === id) as WrittenGroup;
  const cable = { ...present, oneWayM: spot.leadM };
  if (written?.controller === undefined) changes.push(put(`panels.${id}.controller`, { cable }));
  else if (written.controller.cable === undefined) changes.push(put(`panels.${id}.controller.cable`, cable));
  else changes.push({ at: `panels.${id}.controller.cable.oneWayM`, to: spot.leadM });
  return changes;
}

/** What is put there is data as it stands in a document. */
const put = (at: string, to: object): Change => ({ at, to }) as Change;
