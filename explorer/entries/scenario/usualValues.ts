import { CHEMISTRY_DATA } from "../../../engine/bank/chemistryData.ts";
import { coolingOf } from "../../../engine/scenario/coolingOf.ts";
import { drawnW } from "../../../engine/scenario/draw.ts";
import { eventLeafShare, leafShareOf } from "../../../engine/scenario/leafShareOf.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";

type Part = Record<string, unknown>;

/**
 * The scenario with what is filled in later filled in too: the bank's figures by its chemistry, the zone by the place, a
 * radio's bias. They stand grey in the form where nothing is written.
 */
export function usualValues(scenario: Scenario): object {
  const { bank } = scenario;
  const seasonShare = eventLeafShare(scenario);
  const chemistry = CHEMISTRY_DATA[bank.chemistry];
  const in12V = bank.nominalV / 12;
  const ratedAh = bank.blockAh * bank.inParallel;
  const per100Ah = (100 / ratedAh) * in12V;
  const round = (value: number) => Number(value.toPrecision(4));
  const internal = bank.internalResistanceOhm ?? round(chemistry.internalOhmPer100Ah * per100Ah);
  const absorptionV = bank.absorptionV ?? round(chemistry.absorptionVPer12V * in12V);
  return {
    ...scenario,
    stations: scenario.stations.map((station) => ({
      ...station,
      radio: { ...station.radio, bias: station.radio.bias ?? { drawW: round(0.15 * drawnW(station.radio.fullPower)) } },
      modes: station.modes.map((mode) => ({ ...mode, sendingShare: mode.sendingShare ?? station.sendingShare })),
    })),
    panels: scenario.panels.map((group) => ({ ...group, cooling: coolingOf(group, scenario.obstacles) })),
    obstacles: scenario.obstacles.map((obstacle) =>
      obstacle.kind === "tree"
        ? {
            ...obstacle,
            foliage: obstacle.foliage ?? "deciduous",
            leafShare: Number(leafShareOf(obstacle, seasonShare).toFixed(2)),
          }
        : obstacle,
    ),
    sources: scenario.sources.map((source) => ({ ...source, chargeV: source.chargeV ?? absorptionV })),
    bank: {
      ...bank,
      maxChargeA: bank.maxChargeA ?? round(chemistry.maxChargePerAh * ratedAh),
      maxDischargeA: bank.maxDischargeA ?? round(chemistry.maxDischargePerAh * ratedAh),
      internalResistanceOhm: internal,
      chargingResistanceOhm:
        bank.chargingResistanceOhm ?? round(Math.max(internal, chemistry.chargingOhmPer100Ah * per100Ah)),
      coulombicEfficiencyShare: bank.coulombicEfficiencyShare ?? chemistry.coulombicEfficiencyShare,
      peukertExponent: bank.peukertExponent ?? chemistry.peukertExponent,
      absorptionV,
      acceptancePerH: bank.acceptancePerH ?? chemistry.acceptancePerH,
      disconnectV: bank.disconnectV ?? round(chemistry.disconnectVPer12V * in12V),
      reconnectV: bank.reconnectV ?? round(chemistry.reconnectVPer12V * in12V),
      coldDischargeLockC:
        bank.coldDischargeLockC === undefined ? chemistry.coldDischargeLockC : bank.coldDischargeLockC,
      coldChargeLockC: bank.coldChargeLockC === undefined ? chemistry.coldChargeLockC : bank.coldChargeLockC,
    },
  } satisfies Part;
}
