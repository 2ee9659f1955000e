import { prepareBank } from "../bank/prepareBank.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { makeSkyLight, type SkyLight } from "../sky/splitDiffuse.ts";
import { prepareSources } from "../source/prepareSources.ts";
import { figureSpread } from "./memberFigures.ts";
import { type MemberInputs, memberInputs, ownInputs } from "./memberInputs.ts";
import { countingOf } from "./odds.ts";
import { type Prepared, prepare } from "./prepare.ts";
import { type PreparedEnsemble, prepareEnsemble } from "./prepareEnsemble.ts";
import { prepareSelector } from "./prepareSelector.ts";
import { makeReuse } from "./reuse.ts";
import { makeRunRows, type RunRows } from "./runRows.ts";
import type { SizeAxis, SizeWish } from "./sizeAxis.ts";
import { sizeCells } from "./sizeCells.ts";
import type { Surroundings } from "./surroundings.ts";

/** A sky that cells share: drawn once for each member. */
export interface SizeSky {
  readonly ensemble: PreparedEnsemble;
  readonly light: SkyLight;
  readonly airTempC: Float64Array;
}

/** Loads and operators that cells share: drawn once for each member. */
export interface SizeLoads {
  readonly ensemble: PreparedEnsemble;
  readonly spread: Float64Array;
  readonly inputs: MemberInputs;
}

/** Loads with the limits of one bank: what a step reads besides the sky. Wanted watts come from `loads`. */
export interface SizeInputs {
  readonly loads: SizeLoads;
  readonly startShare: number;
  readonly inputs: MemberInputs;
}

export interface SizeCell {
  readonly scenario: Scenario;
  readonly prepared: Prepared;
  readonly sky: SizeSky;
  readonly inputs: MemberInputs;
  /** Shared between cells of one shape: it holds the last one run. */
  readonly run: RunRows;
  readonly reserveAh: number;
}

/**
 * A map ready to be run. What cells have in common stands once: skies, panels with their shade, loads, banks. Holds scratch of
 * the last member drawn: one of these for each thread.
 */
export interface SizeMap {
  readonly seed: string;
  readonly words: Int32Array;
  readonly x: SizeAxis;
  /** Null for a map over one number. */
  readonly y: SizeAxis | null;
  /** The scenario as it stands, with nothing standing about: for its loads and its bank. */
  readonly base: Prepared;
  readonly skies: readonly SizeSky[];
  readonly loads: readonly SizeLoads[];
  readonly inputs: readonly SizeInputs[];
  /** Row by row: x runs within a row. */
  readonly cells: readonly SizeCell[];
  readonly remarks: readonly string[];
}

/** Parts of a map's scenarios that are kept while it is prepared: its panels, crowns over them and skies. */
const KEPT_PARTS = 2000;

/** Parts of a scenario by what they decide; all others decide the sky, and with it everything. */
const PANEL_PARTS = ["panels", "obstacles", "models"] as const;
const LOAD_PARTS = ["gear", "stations", "operators", "converter"] as const;
const CELL_PARTS = [
  "bank",
  "sources",
  "selector",
  "sureness",
  "shedding",
  "name",
  "note",
  "variants",
  "$schema",
] as const;

/**
 * Prepares a map over two numbers of a scenario. Each cell is the scenario with its two values, and its members are those that
 * `prepareEnsemble` gives for that scenario and seed.
 * @param document a scenario as written, or the JSON parsed from it
 * @param y null for a map over one number
 * @param seed any text: the same seed gives the same members
 * @returns problems, in sentences, where a field does not exist, is no number, or a value is refused
 */
export function prepareSizes(
  document: unknown,
  x: SizeWish,
  y: SizeWish | null,
  surroundings: Surroundings,
  seed: string,
): { ok: true; map: SizeMap } | { ok: false; problems: readonly Problem[] } {
  const found = sizeCells(document, x, y);
  if (!found.ok) return found;
  const { scenarios, base } = found.value;
  const reuse = makeReuse(KEPT_PARTS);
  const plain = prepare({ ...base, obstacles: [] }, surroundings, reuse);
  if (!plain.ok) return plain;

  const ensembles = new Map<string, PreparedEnsemble>();
  const skies = new Map<string, SizeSky>();
  const loads = new Map<string, SizeLoads>();
  const inputs = new Map<string, SizeInputs>();
  const banks = new Map<string, Prepared["bank"]>();
  const runs = new Map<string, RunRows>();
  const cells: SizeCell[] = [];
  for (const scenario of scenarios) {
    const part = (names: readonly (keyof Scenario)[]) => JSON.stringify(names.map((name) => scenario[name]));
    const decided = new Set<string>([...PANEL_PARTS, ...LOAD_PARTS, ...CELL_PARTS]);
    const skyKey = part((Object.keys(scenario) as (keyof Scenario)[]).filter((name) => !decided.has(name)).sort());
    const panelKey = `panels ${skyKey} ${part(PANEL_PARTS)} ${scenario.sureness.canopy}`;
    const loadKey = `loads ${skyKey} ${part(LOAD_PARTS)}`;
    if (!ensembles.has(panelKey)) {
      const ready = prepareEnsemble(scenario, surroundings, seed, reuse);
      if (!ready.ok) return ready;
      for (const key of [panelKey, loadKey, skyKey]) if (!ensembles.has(key)) ensembles.set(key, ready.ensemble);
    }
    if (!ensembles.has(loadKey)) {
      const ready = prepareEnsemble({ ...scenario, panels: [], obstacles: [] }, surroundings, seed, reuse);
      if (!ready.ok) return ready;
      ensembles.set(loadKey, ready.ensemble);
    }
    const underSky = ensembles.get(skyKey)!;
    const withPanels = ensembles.get(panelKey)!;
    const withLoads = ensembles.get(loadKey)!;
    const { grid, airTempC } = underSky.prepared;
    const sky = kept(skies, skyKey, () => ({
      ensemble: underSky,
      light: makeSkyLight(grid.steps),
      airTempC: airTempC.slice(),
    }));
    const bankKey = `${skyKey} ${part(["bank"])}`;
    const bank = kept(banks, bankKey, () => prepareBank(scenario.bank, airTempC, grid.stepH));
    const { controllersW } = withPanels.prepared;
    const {
      loads: prepared,
      converterShare,
      converterV,
      feedOhm,
      feedDropV,
      comfortV,
      mainFeedOhm,
    } = withLoads.prepared;
    const spread = figureSpread(scenario.sureness);
    const sureness = part(["sureness"]);
    const drawn = kept(loads, `${loadKey} ${sureness}`, () => {
      return { ensemble: withLoads, spread, inputs: memberInputs(prepared, bank, converterShare, controllersW) };
    });
    const fed = kept(inputs, `${loadKey} ${sureness} ${bankKey} ${controllersW}`, () => ({
      loads: drawn,
      startShare: scenario.bank.startShare,
      // What the gear wants is drawn once for all of them.
      inputs: ownInputs(memberInputs(prepared, bank, converterShare, controllersW), drawn.inputs.wantedW),
    }));
    const cell: Prepared = {
      ...underSky.prepared,
      scenario,
      groups: withPanels.prepared.groups,
      loads: prepared,
      bank,
      sources: prepareSources(scenario.sources, grid, bank.absorptionV),
      selector: prepareSelector(scenario),
      controllersW,
      converterShare,
      converterV,
      feedOhm,
      feedDropV,
      comfortV,
      mainFeedOhm,
      inputs: fed.inputs,
    };
    const shape = [grid.steps, cell.groups.length, cell.sources.length, prepared.stations.length, cell.selector.inputs];
    cells.push({
      scenario,
      prepared: cell,
      sky,
      inputs: fed.inputs,
      run: kept(runs, `${shape} ${scenario.bank.nominalV} ${bank.absorptionV}`, () => makeRunRows(cell)),
      reserveAh: countingOf({ ...underSky, prepared: cell }).reserveAh,
    });
  }
  const first = skies.values().next().value!.ensemble;
  return {
    ok: true,
    map: {
      seed,
      words: first.words,
      x: found.value.x,
      y: found.value.y,
      base: plain.prepared,
      skies: [...skies.values()],
      loads: [...loads.values()],
      inputs: [...inputs.values()],
      cells,
      remarks: first.remarks,
    },
  };
}

function kept<T>(store: Map<string, T>, key: string, make: () => T): T {
  const known = store.get(key);
  if (known !== undefined) return known;
  const made = make();
  store.set(key, made);
  return made;
}
