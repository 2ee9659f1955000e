import { prepareOperators } from "../ensemble/operators.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { prepareLoads } from "../load/prepareLoads.ts";
import { darkShare, preparedOf } from "../run/prepare.ts";
import type { Scenario } from "../scenario/scenario.ts";

/** A load that may stay switched off: a piece of gear, or a station with all that goes with it. */
export interface SheddableLoad {
  readonly id: string;
  readonly name: string;
  readonly isStation: boolean;
}

/** Everything that can be switched off, in the order of the scenario; gear of which there is none is left out. */
export function sheddableLoads(scenario: Scenario): SheddableLoad[] {
  return [
    ...scenario.gear.filter(({ count }) => count > 0).map(({ id, name }) => ({ id, name, isStation: false })),
    ...scenario.stations.map(({ id, name }) => ({ id, name, isStation: true })),
  ];
}

/**
 * The same ensemble with one load switched off for the whole event. A station that is off has nobody at it: what works while
 * it is staffed rests too, and those it shares an interlock with no longer wait for it. Skies, panels and bank are shared with
 * the given ensemble, and everybody else's draws stay as they are.
 */
export function withoutLoad(ensemble: PreparedEnsemble, load: SheddableLoad): PreparedEnsemble {
  const { prepared, words } = ensemble;
  const { grid, nights, bank } = prepared;
  const scenario: Scenario = {
    ...prepared.scenario,
    gear: prepared.scenario.gear.map((thing) =>
      thing.id === load.id && !load.isStation ? { ...thing, count: 0 } : thing,
    ),
    stations: prepared.scenario.stations.map((station) =>
      station.id === load.id && load.isStation
        ? { ...station, staffed: [], whenUnstaffed: "off" as const, companions: [] }
        : station,
    ),
  };
  const loads = prepareLoads(scenario.gear, scenario.stations, grid, darkShare(grid, nights), bank.heaterW);
  const { inputs: _, ...rest } = prepared;
  const without = preparedOf({ ...rest, scenario, loads });
  return { ...ensemble, prepared: without, operators: prepareOperators(without, words) };
}

/** The ensemble without each of its loads, in the order of `sheddableLoads`. */
export function withoutEachLoad(ensemble: PreparedEnsemble): PreparedEnsemble[] {
  return sheddableLoads(ensemble.prepared.scenario).map((load) => withoutLoad(ensemble, load));
}
