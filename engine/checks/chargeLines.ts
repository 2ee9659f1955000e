import type { LimitContext } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";
import { controllerOutputA } from "./panelGroups.ts";

/** Degrees above the lock that count as enough (our choice, no source): what a thermometer and a night miss. */
const ROOM_C = 3;
/** Current below which nobody speaks of charging, A. */
const NOTHING_A = 0.05;

/** The moment in which most charging is on offer against what the bank may take, and what is offered into a locked bank. */
interface ChargeOffers {
  readonly offeredA: number;
  readonly limitA: number;
  readonly lockedH: number;
  /** Coldest bank while something would charge it, °C; null if nothing ever would. */
  readonly coldestC: number | null;
}

/** What charges the bank, hour by hour. */
export function chargeLines(context: LimitContext): LimitLine[] {
  const { prepared } = context.run;
  const { scenario } = prepared;
  const { chemistry, maxChargeA, coldChargeLockC } = scenario.bank;
  const offers = chargeOffers(context);
  if (offers.coldestC === null) return [];
  const cautions = [chemistry === "lfp" ? "lithium" : "lead"];
  const lines = [
    limitLine({
      id: "charge-rate",
      about: "charging the bank",
      quantity: "most on offer (full sun, loads off)",
      value: offers.offeredA,
      unit: "A",
      limit: offers.limitA,
      isAssumed: maxChargeA === undefined,
      rule: LIMIT_RULES.chargeRate,
      change: `Set chargers and controllers so that they give ${Math.floor(offers.limitA)} A together, let one charge at a time, or warm the bank first.`,
      fill: "bank.maxChargeA",
      cautions,
    }),
  ];
  const lockC = coldChargeLockC === undefined ? prepared.bank.chemistry.coldChargeLockC : coldChargeLockC;
  if (lockC !== null) {
    lines.push(
      limitLine({
        id: "cold-charge",
        about: "charging the bank",
        quantity: `coldest bank with a charger on${offers.lockedH > 0 ? ` (${+offers.lockedH.toFixed(1)} h locked)` : ""}`,
        value: offers.coldestC,
        unit: "°C",
        limit: lockC,
        bound: "least",
        closeWithin: ROOM_C,
        isAbove: true,
        isAssumed: coldChargeLockC === undefined,
        rule: LIMIT_RULES.coldCharge,
        change:
          "Keep the bank warm (inside, insulated, with a pad) and the charger off until it is; charging it frozen ruins it.",
        fill: "bank.coldChargeLockC",
        cautions,
      }),
    );
  }
  return lines;
}

/**
 * Looks for the worst of every step. On offer is what the controllers give in full sun with no shade on the panels, while the sun is up, and
 * every source that may run then; of inputs at a selector the larger alone. No run has the day on which all that comes together with a bank
 * that takes it; the wires and the bank's label have to bear it all the same.
 */
function chargeOffers(context: LimitContext): ChargeOffers {
  const { prepared, record } = context.run;
  const { grid, bank, sources, scenario, light } = prepared;
  const fullSunA = scenario.panels.map((group) => {
    const outputA = controllerOutputA(context, group);
    return group.count === 0 ? 0 : Math.min(outputA, group.controller.maxChargeA ?? outputA);
  });
  let worst = { offeredA: 0, limitA: bank.maxChargeA.reduce((most, each) => Math.max(most, each), 0) };
  let lockedH = 0;
  let coldestC: number | null = null;
  for (let i = 0; i < grid.steps; i++) {
    const volts = Math.max(record.bankV[i]!, 1);
    const groupA = light.ghiWm2[i]! > 0 ? fullSunA : fullSunA.map(() => 0);
    const sourceA = sources.map((source) =>
      source.availableShare[i]! > 0 ? Math.min(source.maxA, source.maxW / volts) : 0,
    );
    const offeredA = passedA(context, groupA, sourceA);
    if (offeredA < NOTHING_A) continue;
    const tempC = bank.tempC[i]!;
    coldestC = Math.min(coldestC ?? tempC, tempC);
    const limitA = bank.maxChargeA[i]!;
    if (limitA <= 0) lockedH += grid.stepH;
    else if (offeredA * worst.limitA > worst.offeredA * limitA) worst = { offeredA, limitA };
  }
  return { ...worst, lockedH, coldestC };
}

/** What reaches the bank: everything, or where a selector stands the larger of its inputs and what passes it by. */
function passedA(context: LimitContext, groupA: readonly number[], sourceA: readonly number[]): number {
  const { selector } = context.run.prepared;
  const inputs = new Array<number>(selector.inputs).fill(0);
  let freeA = 0;
  const add = (input: number, amps: number) => {
    if (input < 0) freeA += amps;
    else inputs[input]! += amps;
  };
  for (const [g, amps] of groupA.entries()) add(selector.inputOfGroup[g]!, amps);
  for (const [s, amps] of sourceA.entries()) add(selector.inputOfSource[s]!, amps);
  return freeA + Math.max(0, ...inputs);
}
