import { toGrid } from "../grid.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";

/** How the sections of a group are wired: that many in each string, that many strings side by side. */
export interface StringLayout {
  readonly sectionsPerString: number;
  readonly strings: number;
  /** Sample points in each section. */
  readonly pointsPerSection: number;
}

/**
 * Neighbours in the row form a string. Modules wired for even output (`area`) have no sections to bypass: the whole
 * group is one.
 * @throws RangeError if the modules do not divide into strings
 */
export function stringLayout(group: PanelGroup, points: number): StringLayout {
  if (group.count % group.inSeries !== 0) {
    throw new RangeError(
      `count of panel group ${group.id} must be a multiple of inSeries (${group.inSeries}), got ${group.count}`,
    );
  }
  if (group.module.wiring === "area") return { sectionsPerString: 1, strings: 1, pointsPerSection: points };
  const sectionsPerString = group.inSeries * group.module.bypassSections;
  const strings = group.count / group.inSeries;
  return { sectionsPerString, strings, pointsPerSection: points / (sectionsPerString * strings) };
}

/**
 * Puts together how the beam lies on a group at one moment. A section of cells in series carries only what its darkest cell
 * gives, so its light is that of its darkest point; with `area` wiring it is the mean. Each string's sections are sorted
 * from bright to dark, and the k-th ones of all strings averaged, because strings side by side share one voltage and so
 * bypass equally many sections.
 * @param light one share per point, as `lightOnPoints` gives it
 * @param sectionShare receives, from `at` on, the mean share of the k-th brightest section for k = 1…N
 * @returns mean share over all points, 0…1
 */
export function sectionLight(
  light: Float64Array,
  layout: StringLayout,
  area: boolean,
  sectionShare: Float64Array,
  at: number,
): number {
  const { sectionsPerString, strings, pointsPerSection } = layout;
  let sum = 0;
  for (let p = 0; p < light.length; p++) sum += light[p]!;
  const meanShare = toGrid(sum / light.length);
  if (area) {
    sectionShare[at] = meanShare;
    return meanShare;
  }
  const string = new Float64Array(sectionsPerString);
  sectionShare.fill(0, at, at + sectionsPerString);
  let p = 0;
  for (let s = 0; s < strings; s++) {
    for (let section = 0; section < sectionsPerString; section++) {
      let darkest = 1;
      for (let point = 0; point < pointsPerSection; point++) darkest = Math.min(darkest, light[p++]!);
      string[section] = darkest;
    }
    string.sort();
    for (let k = 0; k < sectionsPerString; k++) {
      sectionShare[at + k]! += string[sectionsPerString - 1 - k]! / strings;
    }
  }
  for (let k = at; k < at + sectionsPerString; k++) sectionShare[k] = toGrid(sectionShare[k]!);
  return meanShare;
}
