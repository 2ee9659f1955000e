import { lanesFor } from "../ensemble/stepMember.ts";
import { type Prepared, prepare } from "../run/prepare.ts";
import { makeReuse } from "../run/reuse.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { growsWithSize } from "./growingSizes.ts";
import { makeSizeStretch, type SizeStretch } from "./makeSizeStretch.ts";
import type { SizeAxis, SizeWish } from "./sizeAxis.ts";
import {
  makeSizeCells,
  type SizeCell,
  type SizeInputs,
  type SizeLoads,
  type SizePanels,
  type SizeSky,
} from "./sizeCell.ts";
import { sizeCells } from "./sizeCells.ts";

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
  /** Whether more only helps, so that members' frontiers say what becomes of them in every cell. */
  readonly grows: boolean;
  readonly stretch: SizeStretch;
}

/** Members drawn together where only frontiers are run: enough that several meet in one cell. */
const MEMBERS_ON_FRONTIERS = 16;

/** Parts of a map's scenarios that are kept while it is prepared: its panels, crowns over them and skies. */
const KEPT_PARTS = 2000;

/**
 * Prepares a map over two numbers of a scenario. Each cell is the scenario with its two values, and its members are those that
 * `prepareEnsemble` gives for that scenario and seed.
 * @param document a scenario as parsed from its JSON, its zone included
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
  const shared = makeSizeCells(surroundings, seed, lanes, reuse);
  const cells: SizeCell[] = [];
  for (const scenario of scenarios) {
    const made = shared.cellOf(scenario);
    if (!made.ok) return made;
    cells.push(made.cell);
  }
  const skies = shared.skies();
  const { words, remarks } = skies[0]!.ensemble;
  const axes = y === null ? [x.at] : [x.at, y.at];
  const map = {
    seed,
    words,
    lanes,
    x: found.value.x,
    y: found.value.y,
    base: plain.prepared,
    skies,
    under: skies.map((sky) => cells.find((cell) => cell.sky === sky)!),
    loads: shared.loads(),
    inputs: shared.inputs(),
    panels: shared.panels(),
    cells,
    remarks,
    grows: growsWithSize(plain.prepared, axes),
  };
  return { ok: true, map: { ...map, stretch: makeSizeStretch(map, map.grows ? MEMBERS_ON_FRONTIERS : lanes) } };
}

/** Steps of an event by the clock; a change of clocks may add or take some. */
function clockSteps({ start, end, stepMinutes }: Scenario["time"]): number {
  return (Date.parse(`${end}Z`) - Date.parse(`${start}Z`)) / (60_000 * stepMinutes);
}
