import type { Cable } from "../scenario/cable.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import { ampacityA, largestFuseA } from "./ampacityA.ts";
import { coldOpenCircuitV } from "./coldOpenCircuitV.ts";
import { CONTINUOUS_FACTOR, fuseFor } from "./fuseFor.ts";
import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";
import { backfeedA, panelCircuitA, panelWireA } from "./panelCircuitA.ts";

/** Strings side by side. */
export const stringsOf = (group: PanelGroup): number => group.count / group.inSeries;

/** Whether a group's long cable carries what the panels give, and not what a tracking controller makes of it. */
export function carriesPanelAmps(group: PanelGroup): boolean {
  return group.controller.kind === "pwm" || group.controller.at === "bank";
}

/** What a group's controller gives the bank at most, A: rated watts over the bank's lowest volts, or the panels' own current. */
export function controllerOutputA(context: LimitContext, group: PanelGroup): number {
  if (group.controller.kind === "pwm") return stringsOf(group) * group.module.impA;
  return (group.count * group.module.ratedW) / context.openV;
}

/** What a group's cable must carry, A. */
export function panelRunCarriesA(context: LimitContext, group: PanelGroup): number {
  if (carriesPanelAmps(group)) return panelWireA(group.module.iscA, stringsOf(group));
  const outputA = controllerOutputA(context, group);
  return CONTINUOUS_FACTOR * Math.min(outputA, group.controller.maxChargeA ?? outputA);
}

/** Strings, controller, fuse and wire of one panel group; nothing of a group without modules. */
export function panelLines(context: LimitContext, group: PanelGroup): LimitLine[] {
  if (group.count === 0) return [];
  const { module, controller } = group;
  const about = group.name;
  const field = `panels.${group.id}`;
  const strings = stringsOf(group);
  const isPwm = controller.kind === "pwm";
  const coldV = coldOpenCircuitV(module.vocV, group.inSeries, module.vocTempCoeffPerK, context.coldestC);
  const circuitA = panelCircuitA(module.iscA, strings);
  const roof = ["shock", "roof"];
  const lines = [
    limitLine({
      id: `panel-volts/${group.id}`,
      about,
      quantity: `string's open volts at ${Math.round(context.coldestC)} °C`,
      value: coldV,
      unit: "V",
      limit: controller.maxPanelV ?? null,
      rule: LIMIT_RULES.panelVolts,
      change:
        group.inSeries > 1
          ? "Wire fewer modules in series, or use a controller for more volts: too many destroy it at the first cold sunrise."
          : "Use a controller for more volts: too many destroy it at the first cold sunrise.",
      fill: `${field}.controller.maxPanelV`,
      cautions: ["shock"],
    }),
    limitLine({
      id: `panel-amps/${group.id}`,
      about,
      quantity: "1.25 × short-circuit current",
      value: circuitA,
      unit: "A",
      limit: controller.maxPanelA ?? (isPwm ? controller.maxChargeA : null),
      rule: LIMIT_RULES.panelAmps,
      change:
        group.inSeries < group.count
          ? "Wire more modules in series if their volts allow it, or use a larger controller."
          : "Use a larger controller.",
      fill: `${field}.controller.${isPwm ? "maxChargeA" : "maxPanelA"}`,
      cautions: roof,
    }),
    limitLine({
      id: `panel-wire/${group.id}`,
      about: `cable of ${group.name}`,
      quantity: "current the wire must carry",
      value: panelRunCarriesA(context, group),
      unit: "A",
      limit: ampacityA(controller.cable, context.warmestC),
      rule: carriesPanelAmps(group) ? LIMIT_RULES.panelWire : LIMIT_RULES.wireCarries,
      change: "Fit thicker wire, or wire more modules in series if their volts allow it.",
      cautions: ["fire"],
    }),
  ];
  if (!isPwm) lines.push(wattsLine(context, group));
  if (isPwm || controller.stepDownOnly) lines.push(lowVoltsLine(context, group));
  // Two strings drive no more into each other than a module stands (NEC 690.9(A), exception, explained in Home Power, “Why Series Fusing?”).
  if (strings > 2) {
    lines.push(
      limitLine({
        id: `series-fuse/${group.id}`,
        about,
        quantity: `current that ${strings - 1} strings drive back into one`,
        value: backfeedA(module.iscA, strings),
        unit: "A",
        limit: module.maxSeriesFuseA ?? null,
        closeWithin: 0,
        rule: LIMIT_RULES.seriesFuse,
        change: "Give each string its own fuse, no larger than the module's series-fuse rating.",
        fill: `${field}.module.maxSeriesFuseA`,
        cautions: ["fire"],
      }),
    );
  }
  lines.push(...outputFuseLines(context, group));
  return lines;
}

/** What cells in the sun are above the air about them, K (common practice, no source). */
const CELL_OVER_AIR_K = 30;
/** Volts above the bank's for a string's to count as comfortable, for 12 V (our choice, no source): cable, diode, the converter's own drop. */
const ROOM_PER_12V = 1;

function lowVoltsLine({ warmestC, run }: LimitContext, group: PanelGroup): LimitLine {
  const { module, inSeries } = group;
  const { bank, scenario } = run.prepared;
  const cellC = warmestC + CELL_OVER_AIR_K;
  const warmV = inSeries * module.vmpV * (1 + module.vocTempCoeffPerK * (cellC - 25));
  return limitLine({
    id: `panel-low/${group.id}`,
    about: group.name,
    quantity: `string's volts at the power point, cells at ${Math.round(cellC)} °C`,
    value: warmV,
    unit: "V",
    limit: bank.absorptionV,
    bound: "least",
    closeWithin: (ROOM_PER_12V * scenario.bank.nominalV) / 12,
    rule: LIMIT_RULES.panelLow,
    change: "Wire more modules in series, or use a controller that raises volts: below the bank's volts nothing flows.",
  });
}

function wattsLine(context: LimitContext, group: PanelGroup): LimitLine {
  return limitLine({
    id: `controller-watts/${group.id}`,
    about: group.name,
    quantity: `rated watts at ${context.openV.toFixed(1)} V`,
    value: controllerOutputA(context, group),
    unit: "A",
    limit: group.controller.maxChargeA,
    closeWithin: 0,
    rule: LIMIT_RULES.controllerWatts,
    change:
      "A tracking controller holds the surplus back and that light is lost; see that its maker allows so much panel, or use a larger one.",
    fill: `panels.${group.id}.controller.maxChargeA`,
  });
}

/** The fuse between controller and bank, and the wire behind it where that is the long cable. */
function outputFuseLines(context: LimitContext, group: PanelGroup): LimitLine[] {
  const { controller } = group;
  const outputA = controllerOutputA(context, group);
  const givesA = Math.min(outputA, controller.maxChargeA ?? outputA);
  const needA =
    controller.kind === "pwm"
      ? panelWireA(group.module.iscA, stringsOf(group))
      : CONTINUOUS_FACTOR * (controller.maxChargeA ?? givesA);
  const carriesBankVolts = controller.at === "panels";
  const mostFuseA = carriesBankVolts ? largestFuseA(controller.cable, context.warmestC) : null;
  const fuse = fuseFor(0, needA / CONTINUOUS_FACTOR, mostFuseA);
  const fits = fuse === null ? "Fit a thicker wire, then a fuse for it." : `Fit a ${fuse} A fuse, at the bank's end.`;
  const field = `panels.${group.id}.controller.fuseA`;
  const common = { about: `controller of ${group.name}`, unit: "A", closeWithin: 0, fill: field, cautions: ["fire"] };
  const lines = [
    limitLine({
      ...common,
      id: `controller-fuse/${group.id}`,
      quantity: "1.25 × charging current",
      value: needA,
      limit: controller.fuseA ?? null,
      rule: LIMIT_RULES.controllerFuse,
      isOverWhereMissing: `No fuse is stated, and without one the bank burns this wire in a short. ${fits} Then state ${field}.`,
      change: fits,
    }),
  ];
  if (carriesBankVolts) {
    lines.push(
      limitLine({
        ...common,
        id: `controller-fuse-wire/${group.id}`,
        quantity: "fuse for its wire",
        value: controller.fuseA ?? null,
        limit: mostFuseA,
        rule: LIMIT_RULES.fuseForWire,
        change: "Fit a smaller fuse or thicker wire.",
      }),
    );
  }
  return lines;
}

/** Current and volts by which the drop in a group's cable is measured. */
export function panelRun(context: LimitContext, group: PanelGroup): { cable: Cable; currentA: number; atV: number } {
  const { module, controller } = group;
  const { nominalV } = context.run.prepared.scenario.bank;
  const outputA = controllerOutputA(context, group);
  if (!carriesPanelAmps(group)) {
    const currentA = Math.min(outputA, controller.maxChargeA ?? outputA);
    return { cable: controller.cable, currentA, atV: nominalV };
  }
  const atV = controller.kind === "pwm" ? nominalV : group.inSeries * module.vmpV;
  return { cable: controller.cable, currentA: stringsOf(group) * module.impA, atV };
}
