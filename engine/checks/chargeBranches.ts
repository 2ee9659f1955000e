import { USUAL_PANEL_CABLE } from "../scenario/cable.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { BESIDE_BANK_M } from "./assumedCable.ts";
import type { Branch } from "./branch.ts";
import { CONTINUOUS_FACTOR } from "./fuseFor.ts";
import type { LimitContext } from "./limitContext.ts";
import { holderOf, makeBranch, ratedPart } from "./makeBranch.ts";
import { panelWireA } from "./panelCircuitA.ts";
import { controllerOutputA, stringsOf } from "./panelGroups.ts";

/** From each panel group to its controller, and from there to the bank. */
export function panelBranches(context: LimitContext): Branch[] {
  const { scenario } = context.run.prepared;
  return scenario.panels.flatMap((group) => (group.count === 0 ? [] : branchesOf(context, group)));
}

function branchesOf(context: LimitContext, group: PanelGroup): Branch[] {
  const { module, controller, id } = group;
  const { nominalV } = context.run.prepared.scenario.bank;
  const strings = stringsOf(group);
  const isPwm = controller.kind === "pwm";
  const field = `panels.${id}.controller`;
  const longIsToBank = controller.at === "panels";
  const long = { stated: controller.cable, usual: USUAL_PANEL_CABLE, cableField: `${field}.cable` };
  const short = { stated: controller.shortCable, usual: BESIDE_BANK_M, cableField: `${field}.shortCable` };
  const panelA = panelWireA(module.iscA, strings);
  const outputA = controllerOutputA(context, group);
  const givesA = Math.min(outputA, controller.maxChargeA ?? outputA);
  const ratedA = controller.maxChargeA ?? givesA;
  return [
    makeBranch(context, {
      ...(longIsToBank ? short : long),
      id: `panels/${id}`,
      kind: "panels",
      about: `cable of ${group.name}`,
      short: `${group.name} to controller`,
      box: { title: group.name, detail: `${group.count} × ${group.module.ratedW} W` },
      peakA: strings * module.iscA,
      lastingA: strings * module.impA,
      wireA: panelA,
      dropA: strings * module.impA,
      atV: isPwm ? nominalV : group.inSeries * module.vmpV,
      fuse: null,
    }),
    makeBranch(context, {
      ...(longIsToBank ? long : short),
      id: `controller/${id}`,
      kind: "controller",
      about: `controller of ${group.name} to bank`,
      short: `${group.name}: controller to bank`,
      box: { title: "Controller", detail: controller.maxChargeA === null ? "" : `${controller.maxChargeA} A` },
      peakA: isPwm ? strings * module.iscA : ratedA,
      lastingA: givesA,
      wireA: isPwm ? panelA : CONTINUOUS_FACTOR * givesA,
      dropA: givesA,
      atV: nominalV,
      fuse: {
        ratingA: controller.fuseA ?? null,
        needA: isPwm ? panelA : CONTINUOUS_FACTOR * ratedA,
        isPeakBound: false,
        field: `${field}.fuseA`,
      },
      behind: [ratedPart("holder", controller.holderA)],
    }),
  ];
}

/** From each charger to the bank. */
export function sourceBranches(context: LimitContext): Branch[] {
  const { scenario, sources } = context.run.prepared;
  return scenario.sources.map((source, s) => {
    const { maxA, maxW } = sources[s]!;
    const givesA = Math.min(maxA, maxW / context.openV);
    const field = `sources.${source.id}.lead`;
    return makeBranch(context, {
      id: `source/${source.id}`,
      kind: "source",
      about: `${source.name}, ${chargerOf(source)} to bank`,
      short: `${source.name}: ${chargerOf(source)} to bank`,
      box: { title: source.name, detail: `${chargerOf(source)} ${maxA} A` },
      peakA: maxA,
      lastingA: givesA,
      wireA: CONTINUOUS_FACTOR * givesA,
      dropA: givesA,
      atV: scenario.bank.nominalV,
      stated: source.lead?.cable,
      usual: BESIDE_BANK_M,
      cableField: `${field}.cable`,
      fuse: {
        ratingA: source.lead?.fuseA ?? null,
        needA: CONTINUOUS_FACTOR * maxA,
        isPeakBound: false,
        field: `${field}.fuseA`,
      },
      behind: [holderOf(source.lead)],
    });
  });
}

const chargerOf = ({ kind }: Scenario["sources"][number]) => (kind === "vehicle" ? "DC-DC" : "charger");
