import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { LimitContext } from "./limitContext.ts";

/** Strings side by side. */
export const stringsOf = (group: PanelGroup): number => group.count / group.inSeries;

/** What a group's controller gives the bank at most, A: rated watts over the bank's lowest volts, or the panels' own current. */
export function controllerOutputA(context: LimitContext, group: PanelGroup): number {
  if (group.controller.kind === "pwm") return stringsOf(group) * group.module.impA;
  return (group.count * group.module.ratedW) / context.openV;
}
