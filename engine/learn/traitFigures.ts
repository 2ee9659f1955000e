import { keennessAt, keennessTable } from "../ensemble/keenness.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import {
  FIGURE_CANOPY_NORMAL,
  FIGURE_CAPACITY_SHARE,
  FIGURE_IDLE_SHARE,
  FIGURE_START_SHARE,
  FIGURE_YIELD_SHARE,
  SURENESS_SPREAD,
} from "../run/memberFigures.ts";
import { type Particles, TRAIT_KEENNESS, TRAITS } from "./particles.ts";

/** A figure of the plan that readings can move; 1 is as planned, except for the charge at the start, which is a share of full. */
export type TraitName = "load" | "idleDraw" | "keenness" | "canopy" | "panelYield" | "capacity" | "startCharge";

/** One figure of every particle, or null where the scenario has no such thing. */
export function traitFigures(ensemble: PreparedEnsemble, particles: Particles, name: TraitName): Float64Array | null {
  const { prepared, hasCrowns } = ensemble;
  const { scenario, loads } = prepared;
  const each = (figure: (row: number) => number) =>
    Float64Array.from({ length: particles.count }, (_, p) => figure(p * TRAITS));
  const { traits } = particles;
  switch (name) {
    case "idleDraw":
      return each((row) => traits[row + FIGURE_IDLE_SHARE]!);
    case "panelYield":
      return scenario.panels.some((group) => group.count > 0) ? each((row) => traits[row + FIGURE_YIELD_SHARE]!) : null;
    case "capacity":
      return each((row) => traits[row + FIGURE_CAPACITY_SHARE]!);
    case "startCharge":
      return each((row) => traits[row + FIGURE_START_SHARE]!);
    case "canopy": {
      if (!hasCrowns) return null;
      const spread = SURENESS_SPREAD.canopy[scenario.sureness.canopy];
      return each((row) => Math.max(0, 1 + spread * traits[row + FIGURE_CANOPY_NORMAL]!));
    }
    case "keenness": {
      if (loads.stations.every((station) => station.sendingExtraW === 0)) return null;
      const table = eventKeenness(ensemble);
      return each((row) => keennessAt(table, traits[row + TRAIT_KEENNESS]!));
    }
    case "load": {
      const quietWh = loads.quietW.reduce((sum, watts) => sum + watts, 0);
      const wantedWh = loads.wantedW.reduce((sum, watts) => sum + watts, 0);
      if (wantedWh <= 0) return null;
      const table = eventKeenness(ensemble);
      const quietShare = quietWh / wantedWh;
      return each((row) => {
        const keen = keennessAt(table, traits[row + TRAIT_KEENNESS]!);
        return quietShare * traits[row + FIGURE_IDLE_SHARE]! + (1 - quietShare) * keen;
      });
    }
  }
}

/** How much more or less than planned an event sends by its own normal value, days and hours averaged out. */
function eventKeenness(ensemble: PreparedEnsemble): Float64Array {
  const { betweenEventsShare } = ensemble.prepared.scenario.operators;
  return keennessTable(Math.log(1 + betweenEventsShare * betweenEventsShare));
}
