import { FIGURES } from "../run/memberFigures.ts";
import type { SizeCell, SizeInputs, SizeLoads, SizePanels } from "./sizeCell.ts";

/**
 * What members of a stretch bring to the cells of a map: what they want, their figures, and what the sky makes of each cell's panels. Worked out
 * once; a cell then only runs its bank. Rows of panels that the bank's volts write over are kept as they were.
 */
export interface SizeStretch {
  /** Members that there is room for. */
  readonly most: number;
  readonly wanted: ReadonlyMap<SizeLoads, Float64Array>;
  readonly figures: ReadonlyMap<SizeInputs, readonly Float64Array[]>;
  readonly panels: ReadonlyMap<SizePanels, KeptPanels>;
}

/** Panels of a stretch's members, one member's steps after the other's. */
export interface KeptPanels {
  /** A cell that has them. */
  readonly cell: SizeCell;
  readonly sumW: Float64Array;
  readonly coupled: Int32Array;
  /** Where each member's kept rows start among `rowStep`; one more value than members. */
  readonly firstRow: Int32Array;
  /** The step of each kept row, and `PLANE_SLOTS` numbers of each group. Grows as it is filled. */
  rowStep: Int32Array;
  rows: Float64Array;
}

/** What stretches of a map are made for. */
interface MapParts {
  readonly cells: readonly SizeCell[];
  readonly loads: readonly SizeLoads[];
  readonly inputs: readonly SizeInputs[];
}

/** Room for the members of a stretch. @param most members at a time */
export function makeSizeStretch(map: MapParts, most: number): SizeStretch {
  const panels = new Map<SizePanels, KeptPanels>();
  for (const cell of map.cells) {
    if (panels.has(cell.panels)) continue;
    panels.set(cell.panels, {
      cell,
      sumW: new Float64Array(most * cell.prepared.grid.steps),
      coupled: new Int32Array(most * cell.prepared.grid.steps),
      firstRow: new Int32Array(most + 1),
      rowStep: new Int32Array(0),
      rows: new Float64Array(0),
    });
  }
  return {
    most,
    wanted: new Map(map.loads.map((loads) => [loads, new Float64Array(most * loads.inputs.wantedW.length)])),
    figures: new Map(
      map.inputs.map((inputs) => [inputs, Array.from({ length: most }, () => new Float64Array(FIGURES))]),
    ),
    panels,
  };
}
