import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

/**
 * Physics itself forbids "more sun, never less charge" where something switches on charge or volts: a generator that is
 * started later, a disconnect that opens later (and so goes on discharging), a selector that picks the larger input, a
 * controller that steps down only or a PWM that sits on the bank's volts. Those are taken out; what is left must be monotone.
 */
export function withoutSwitches(input: ScenarioInput): ScenarioInput {
  return {
    ...input,
    sources: (input.sources ?? []).filter((source) => source.kind !== "generator"),
    selector: { mode: "both" },
    panels: (input.panels ?? []).map((group) => ({
      ...group,
      controller: { ...group.controller, kind: "mppt", stepDownOnly: false, maxChargeA: null, at: "bank" },
    })),
    bank: { ...input.bank, disconnectV: 0, reconnectV: 0 },
  };
}

/**
 * Steps are finite: in the steep foot and top of the LFP curve a fuller bank meets other volts, and one step of up to an
 * hour may then overtake a neighbour by a part of that stretch, which is 0.3 % of the charge.
 */
export const SLACK_SHARE = 0.003;
