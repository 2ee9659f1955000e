import type { PanelGroup } from "../scenario/panelGroup.ts";
import { coldOpenCircuitV } from "./coldOpenCircuitV.ts";
import { CONTINUOUS_FACTOR, fuseFor } from "./fuseFor.ts";
import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";
import { backfeedA, panelCircuitA, panelWireA } from "./panelCircuitA.ts";
import { controllerOutputA, stringsOf } from "./panelGroups.ts";

/** Open volts, currents and fuses of one panel group's strings and what its controller stands; nothing of a group without modules. */
export function panelLines(context: LimitContext, group: PanelGroup): LimitLine[] {
  if (group.count === 0) return [];
  const { module, controller } = group;
  const about = group.name;
  const field = `panels.${group.id}`;
  const strings = stringsOf(group);
  const isPwm = controller.kind === "pwm";
  const coldV = coldOpenCircuitV(module.vocV, group.inSeries, module.vocTempCoeffPerK, context.coldestC);
  const circuitA = panelCircuitA(module.iscA, strings);
  const larger = controllerFor(context, group, { coldV, circuitA });
  const run = `panels/${group.id}`;
  const lines = [
    limitLine({
      id: `panel-volts/${group.id}`,
      run,
      about,
      quantity: `string's open volts at ${Math.round(context.coldestC)} °C`,
      value: coldV,
      unit: "V",
      limit: controller.maxPanelV ?? null,
      rule: LIMIT_RULES.panelVolts,
      change: `${fewer(group, coldV)}${larger}: too many volts destroy it at the first cold sunrise.`,
      fill: `${field}.controller.maxPanelV`,
      cautions: ["shock"],
    }),
    limitLine({
      id: `panel-amps/${group.id}`,
      run,
      about,
      quantity: "1.25 × short-circuit current",
      value: circuitA,
      unit: "A",
      limit: controller.maxPanelA ?? (isPwm ? controller.maxChargeA : null),
      rule: LIMIT_RULES.panelAmps,
      change: `${group.inSeries < group.count ? "Wire more modules in series if their volts allow it, or use" : "Use"} ${larger}.`,
      fill: `${field}.controller.${isPwm ? "maxChargeA" : "maxPanelA"}`,
      cautions: ["shock", "roof"],
    }),
  ];
  if (!isPwm) lines.push(wattsLine(context, group));
  if (isPwm || controller.stepDownOnly) lines.push(lowVoltsLine(context, group));
  if (strings > 1) lines.push(...stringFuseLines(group));
  return lines;
}

/** Two strings drive no more into each other than a module stands (NEC 690.9(A), exception, explained in Home Power, “Why Series Fusing?”). */
const STRINGS_WITHOUT_FUSE = 2;

/** Each string's own fuse where one is stated: it carries the string and is one that the module may stand behind; else what the others drive back. */
function stringFuseLines(group: PanelGroup): LimitLine[] {
  const { module, stringFuseA, id } = group;
  const strings = stringsOf(group);
  const needA = panelWireA(module.iscA, 1);
  const fuse = fuseFor(0, needA / CONTINUOUS_FACTOR, module.maxSeriesFuseA ?? null);
  const fits =
    fuse === null
      ? "No fuse carries a string and is one that the module may stand behind: wire fewer strings side by side, or ask the module's maker."
      : `Give each string a ${fuse} A fuse of its own.`;
  const common = {
    run: `panels/${id}`,
    about: group.name,
    unit: "A",
    closeWithin: 0,
    rule: LIMIT_RULES.seriesFuse,
    change: fits,
    cautions: ["fire"],
  };
  if (stringFuseA === undefined) {
    if (strings <= STRINGS_WITHOUT_FUSE) return [];
    return [
      limitLine({
        ...common,
        id: `series-fuse/${id}`,
        quantity: `current that ${strings - 1} strings drive back into one`,
        value: backfeedA(module.iscA, strings),
        limit: module.maxSeriesFuseA ?? null,
        fill: `panels.${id}.module.maxSeriesFuseA`,
      }),
    ];
  }
  return [
    limitLine({
      ...common,
      id: `string-fuse/${id}`,
      quantity: "1.56 × a string's short-circuit current",
      value: needA,
      limit: stringFuseA,
    }),
    limitLine({
      ...common,
      id: `series-fuse/${id}`,
      quantity: "fuse of each string",
      value: stringFuseA,
      limit: module.maxSeriesFuseA ?? null,
      fill: `panels.${id}.module.maxSeriesFuseA`,
    }),
  ];
}

/** A controller for all that this group asks of it, so that what is said of one line holds for the others too. */
function controllerFor(
  context: LimitContext,
  group: PanelGroup,
  { coldV, circuitA }: { coldV: number; circuitA: number },
): string {
  const { maxPanelV, maxPanelA, maxChargeA, kind } = group.controller;
  const isPwm = kind === "pwm";
  const standsA = maxPanelA ?? (isPwm ? maxChargeA : null);
  const givesA = isPwm ? circuitA : controllerOutputA(context, group);
  const asks = [
    ...(maxPanelV === undefined || maxPanelV < coldV ? [`an input for ${Math.ceil(coldV)} V`] : []),
    ...(standsA === null || standsA < circuitA ? [`${isPwm ? "" : "an input for "}${Math.ceil(circuitA)} A`] : []),
    ...(!isPwm && maxChargeA !== null && maxChargeA < givesA ? [`an output of ${Math.ceil(givesA)} A`] : []),
  ];
  return `a controller with ${asks.length <= 1 ? asks.join("") : `${asks.slice(0, -1).join(", ")} and ${asks.at(-1)}`}`;
}

/** "Wire at most 2 modules in series, or use " where that would do; else "Use ". */
function fewer({ inSeries, controller }: PanelGroup, coldV: number): string {
  const most = controller.maxPanelV === undefined ? 0 : Math.floor((controller.maxPanelV * inSeries) / coldV);
  return most >= 1 && most < inSeries ? `Wire at most ${most} in series, or use ` : "Use ";
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
    run: `panels/${group.id}`,
    about: group.name,
    quantity: `string's volts at the power point, cells at ${Math.round(cellC)} °C`,
    value: warmV,
    unit: "V",
    limit: bank.absorptionV,
    bound: "least",
    closeWithin: (ROOM_PER_12V * scenario.bank.nominalV) / 12,
    rule: LIMIT_RULES.panelLow,
    change: `Wire ${Math.ceil((inSeries * bank.absorptionV) / warmV)} or more modules in series, or use a controller that raises volts: below the bank's volts nothing flows.`,
  });
}

function wattsLine(context: LimitContext, group: PanelGroup): LimitLine {
  return limitLine({
    id: `controller-watts/${group.id}`,
    run: `controller/${group.id}`,
    about: group.name,
    quantity: `rated watts at ${context.openV.toFixed(1)} V`,
    value: controllerOutputA(context, group),
    unit: "A",
    limit: group.controller.maxChargeA,
    closeWithin: 0,
    rule: LIMIT_RULES.controllerWatts,
    change: `A tracking controller holds the surplus back and that light is lost; see that its maker allows so much panel, or use one for ${Math.ceil(controllerOutputA(context, group))} A.`,
    fill: `panels.${group.id}.controller.maxChargeA`,
  });
}
