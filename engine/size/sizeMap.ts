import { type DomeLight, makeDomeLight } from "../array/domeLight.ts";
import { type FixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { prepareBank } from "../bank/prepareBank.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { lanesFor } from "../ensemble/stepMember.ts";
import { countingOf } from "../odds/odds.ts";
import { FIGURES, figureSpread } from "../run/memberFigures.ts";
import { type MemberInputs, memberInputs } from "../run/memberInputs.ts";
import { makePrepared, type Prepared, prepare } from "../run/prepare.ts";
import { prepareSelector } from "../run/prepareSelector.ts";
import { makeReuse } from "../run/reuse.ts";
import { makeRunRows, type RunRows } from "../run/runRows.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { makeSkyLight, type SkyLight } from "../sky/splitDiffuse.ts";
import { prepareSources } from "../source/prepareSources.ts";
import type { SizeAxis, SizeWish } from "./sizeAxis.ts";
import { sizeCells } from "./sizeCells.ts";

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

/** Panels that cells share with all that decides what they give without asking the bank: worked out once for the members side by side. */
export interface SizePanels {
  /** Whether they have been worked out for the members at hand, and no step depends on the bank's volts: then the next cell may have them too. */
  isSettled: boolean;
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

/**
 * A map ready to be run. What cells have in common stands once: skies, panels with their shade, loads, banks. Holds scratch of
 * the last member drawn: one of these for each thread.
 */
export interface SizeMap {
  readonly seed: string;
  readonly words: Int32Array;
  /** Members side by side in all cells. */
  readonly lanes: number;
  readonly x: SizeAxis;
  /** Null for a map over one number. */
  readonly y: SizeAxis | null;
  /** The scenario as it stands, with nothing standing about: for its loads and its bank. */
  readonly base: Prepared;
  readonly skies: readonly SizeSky[];
  /** Some cell under each of them: all under one sky have one light, since numbers change no transposition. */
  readonly under: readonly SizeCell[];
  readonly loads: readonly SizeLoads[];
  readonly inputs: readonly SizeInputs[];
  readonly panels: readonly SizePanels[];
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

  const lanes = Math.min(...scenarios.map(({ time }) => lanesFor(clockSteps(time))));
  const ensembles = new Map<string, PreparedEnsemble>();
  const skies = new Map<string, SizeSky>();
  const loads = new Map<string, SizeLoads>();
  const inputs = new Map<string, SizeInputs>();
  const banks = new Map<string, Prepared["bank"]>();
  const runs = new Map<string, RunRows>();
  const lights = new Map<string, DomeLight>();
  const panels = new Map<string, SizePanels & { readonly fixed: FixedPower }>();
  const cells: SizeCell[] = [];
  for (const scenario of scenarios) {
    const part = (names: readonly (keyof Scenario)[]) => JSON.stringify(names.map((name) => scenario[name]));
    const decided = new Set<string>([...PANEL_PARTS, ...LOAD_PARTS, ...CELL_PARTS]);
    const skyKey = part((Object.keys(scenario) as (keyof Scenario)[]).filter((name) => !decided.has(name)).sort());
    const panelKey = `panels ${skyKey} ${part(PANEL_PARTS)} ${scenario.sureness.canopy}`;
    // A pad in the battery box is a load, and how hard it works goes by the bank's size.
    const pad = scenario.bank.box?.heater === undefined ? "" : part(["bank"]);
    const loadKey = `loads ${skyKey} ${part(LOAD_PARTS)} ${pad}`;
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
      const inputs = memberInputs(prepared, bank, converterShare, controllersW);
      return { ensemble: withLoads, spread, inputs, wantedW: new Float64Array(lanes * grid.steps) };
    });
    const fed = kept(inputs, `${loadKey} ${sureness} ${bankKey} ${controllersW}`, () => ({
      loads: drawn,
      startShare: scenario.bank.startShare,
      // What the gear wants is drawn once for all of them.
      inputs: memberInputs(prepared, bank, converterShare, controllersW),
      figures: Array.from({ length: lanes }, () => new Float64Array(FIGURES)),
    }));
    const cell = makePrepared({
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
    });
    const shape = [grid.steps, cell.groups.length, cell.sources.length, prepared.stations.length, cell.selector.inputs];
    const { transposition } = scenario.models;
    const byShape = kept(runs, String(shape), () => makeRunRows(cell, lanes));
    const light = kept(lights, skyKey, () => makeDomeLight(transposition, grid.steps, lanes));
    const given = kept(panels, `${panelKey} ${sureness} ${scenario.bank.nominalV} ${bank.absorptionV}`, () => {
      return { isSettled: false, fixed: makeFixedPower(grid.steps, 0, 0, lanes) }; // for its memory: volts are each run's own
    });
    const shared = { ...byShape, light, wantedW: drawn.wantedW, fixed: given.fixed };
    cells.push({
      scenario,
      prepared: cell,
      sky,
      panels: given,
      inputs: fed,
      run: makeRunRows(cell, lanes, shared),
      reserveAh: countingOf({ ...underSky, prepared: cell }).reserveAh,
    });
  }
  const first = skies.values().next().value!.ensemble;
  return {
    ok: true,
    map: {
      seed,
      words: first.words,
      lanes,
      x: found.value.x,
      y: found.value.y,
      base: plain.prepared,
      skies: [...skies.values()],
      under: [...skies.values()].map((sky) => cells.find((cell) => cell.sky === sky)!),
      loads: [...loads.values()],
      inputs: [...inputs.values()],
      panels: [...panels.values()],
      cells,
      remarks: first.remarks,
    },
  };
}

/** Steps of an event by the clock; a change of clocks may add or take some. */
function clockSteps({ start, end, stepMinutes }: Scenario["time"]): number {
  return (Date.parse(`${end}Z`) - Date.parse(`${start}Z`)) / (60_000 * stepMinutes);
}

function kept<T>(store: Map<string, T>, key: string, make: () => T): T {
  const known = store.get(key);
  if (known !== undefined) return known;
  const made = make();
  store.set(key, made);
  return made;
}
