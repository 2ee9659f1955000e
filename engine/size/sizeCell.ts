import { makeDomeLight } from "../array/domeLight.ts";
import { type FixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { prepareBank } from "../bank/prepareBank.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { countingOf } from "../odds/odds.ts";
import { FIGURES, figureSpread } from "../run/memberFigures.ts";
import { type MemberInputs, memberInputs } from "../run/memberInputs.ts";
import { type Prepared, preparedOf } from "../run/prepare.ts";
import type { Reuse } from "../run/reuse.ts";
import { makeRunRows, type RunRows } from "../run/runRows.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { makeSkyLight, type SkyLight } from "../sky/splitDiffuse.ts";

/** A sky that cells share: drawn and sorted once for each member. */
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
  /** What is wanted by the members side by side; `inputs` holds one of them. */
  readonly wantedW: Float64Array;
}

/** Loads with the limits of one bank: what a step reads besides the sky. */
export interface SizeInputs {
  readonly loads: SizeLoads;
  readonly startShare: number;
  readonly inputs: MemberInputs;
  /** Figures of the members side by side. */
  readonly figures: readonly Float64Array[];
}

/** Panels that cells share with all that decides what they give without asking the bank: worked out once for each member. */
export interface SizePanels {
  /** For its memory: volts are each run's own. */
  readonly fixed: FixedPower;
}

export interface SizeCell {
  readonly scenario: Scenario;
  readonly prepared: Prepared;
  readonly sky: SizeSky;
  readonly panels: SizePanels;
  readonly inputs: SizeInputs;
  /** Its memory is shared: light by sky, wanted watts by loads, power of the panels by those, all else by shape; it holds the last cell run. */
  readonly run: RunRows;
  readonly reserveAh: number;
}

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
const DECIDED = new Set<string>([...PANEL_PARTS, ...LOAD_PARTS, ...CELL_PARTS]);

const part = (scenario: Scenario, names: readonly (keyof Scenario)[]) =>
  JSON.stringify(names.map((name) => scenario[name]));

/** What tells the sky, the panels and the loads of one scenario from those of another. */
function keysOf(scenario: Scenario) {
  const others = (Object.keys(scenario) as (keyof Scenario)[]).filter((name) => !DECIDED.has(name)).sort();
  const sky = part(scenario, others);
  // A pad in the battery box is a load, and how hard it works goes by the bank's size.
  const pad = scenario.bank.box?.heater === undefined ? "" : part(scenario, ["bank"]);
  return {
    sky,
    panels: `panels ${sky} ${part(scenario, PANEL_PARTS)} ${scenario.sureness.canopy}`,
    loads: `loads ${sky} ${part(scenario, LOAD_PARTS)} ${pad}`,
    bank: `${sky} ${part(scenario, ["bank"])}`,
    sureness: part(scenario, ["sureness"]),
  };
}

/**
 * Makes the cells of a map one after another, and keeps what the next may have in common with them: skies, panels with their shade, loads, banks.
 * @param lanes members side by side
 * @param reuse parts of scenarios that are kept while the map is prepared
 */
export function makeSizeCells(surroundings: Surroundings, seed: string, lanes: number, reuse: Reuse) {
  const ensembles = new Map<string, PreparedEnsemble>();
  const skies = makeKept<SizeSky>();
  const loads = makeKept<SizeLoads>();
  const inputs = makeKept<SizeInputs>();
  const panels = makeKept<SizePanels>();
  const banks = makeKept<Prepared["bank"]>();
  const runs = makeKept<RunRows>();
  const lights = makeKept<ReturnType<typeof makeDomeLight>>();

  /** The ensemble under a scenario's sky, the one with its panels, and the one with its loads: the same one where nothing else is at hand. */
  function ensemblesOf(scenario: Scenario, keys: ReturnType<typeof keysOf>) {
    if (!ensembles.has(keys.panels)) {
      const ready = prepareEnsemble(scenario, surroundings, seed, reuse);
      if (!ready.ok) return ready;
      for (const key of [keys.panels, keys.loads, keys.sky])
        if (!ensembles.has(key)) ensembles.set(key, ready.ensemble);
    }
    if (!ensembles.has(keys.loads)) {
      const ready = prepareEnsemble({ ...scenario, panels: [], obstacles: [] }, surroundings, seed, reuse);
      if (!ready.ok) return ready;
      ensembles.set(keys.loads, ready.ensemble);
    }
    return {
      ok: true as const,
      underSky: ensembles.get(keys.sky)!,
      withPanels: ensembles.get(keys.panels)!,
      withLoads: ensembles.get(keys.loads)!,
    };
  }

  /** What a step of a scenario reads besides the sky; gear's wants are drawn once for all of the same loads. */
  function inputsOf(
    scenario: Scenario,
    keys: ReturnType<typeof keysOf>,
    withLoads: PreparedEnsemble,
    bank: Prepared["bank"],
    controllersW: number,
  ): SizeInputs {
    const { loads: prepared, converterShare, grid } = withLoads.prepared;
    const fresh = () => memberInputs(prepared, bank, converterShare, controllersW);
    const drawn = loads.get(`${keys.loads} ${keys.sureness}`, () => ({
      ensemble: withLoads,
      spread: figureSpread(scenario.sureness),
      inputs: fresh(),
      wantedW: new Float64Array(lanes * grid.steps),
    }));
    return inputs.get(`${keys.loads} ${keys.sureness} ${keys.bank} ${controllersW}`, () => ({
      loads: drawn,
      startShare: scenario.bank.startShare,
      inputs: fresh(),
      figures: Array.from({ length: lanes }, () => new Float64Array(FIGURES)),
    }));
  }

  function cellOf(
    scenario: Scenario,
  ): { ok: true; cell: SizeCell } | { readonly ok: false; readonly problems: readonly Problem[] } {
    const keys = keysOf(scenario);
    const found = ensemblesOf(scenario, keys);
    if (!found.ok) return found;
    const { underSky, withPanels, withLoads } = found;
    const { grid, airTempC } = underSky.prepared;
    const sky = skies.get(keys.sky, () => ({
      ensemble: underSky,
      light: makeSkyLight(grid.steps),
      airTempC: airTempC.slice(),
    }));
    const bank = banks.get(keys.bank, () => prepareBank(scenario.bank, airTempC, grid.stepH));
    const fed = inputsOf(scenario, keys, withLoads, bank, withPanels.prepared.controllersW);
    const prepared = preparedOf({
      ...underSky.prepared,
      scenario,
      groups: withPanels.prepared.groups,
      loads: withLoads.prepared.loads,
      bank,
      inputs: fed.inputs,
    });
    const { groups, sources, loads, selector } = prepared;
    const shape = [grid.steps, groups.length, sources.length, loads.stations.length, selector.inputs];
    const byShape = runs.get(String(shape), () => makeRunRows(prepared, lanes));
    const light = lights.get(keys.sky, () => makeDomeLight(scenario.models.transposition, grid.steps, lanes));
    const volts = `${scenario.bank.nominalV} ${bank.absorptionV}`;
    const given = panels.get(`${keys.panels} ${keys.sureness} ${volts}`, () => {
      return { fixed: makeFixedPower(grid.steps, 0, 0, lanes) };
    });
    const shared = { ...byShape, light, wantedW: fed.loads.wantedW, fixed: given.fixed };
    const run = makeRunRows(prepared, lanes, shared);
    const { reserveAh } = countingOf({ ...underSky, prepared });
    return { ok: true, cell: { scenario, prepared, sky, panels: given, inputs: fed, run, reserveAh } };
  }

  return { cellOf, skies: skies.all, loads: loads.all, inputs: inputs.all, panels: panels.all };
}

/** Things made once for each key, in the order in which they were first asked for. */
function makeKept<T>() {
  const store = new Map<string, T>();
  return {
    get(key: string, make: () => T): T {
      const known = store.get(key);
      if (known !== undefined) return known;
      const made = make();
      store.set(key, made);
      return made;
    },
    all: (): readonly T[] => [...store.values()],
  };
}
