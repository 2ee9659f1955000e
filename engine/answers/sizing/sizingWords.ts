import { plainFigure } from "../../fields/shownValue.ts";
import type { Change } from "../../scenario/change.ts";
import type { ScenarioInput } from "../../scenario/scenario.ts";
import type { SizeAxis } from "../../size/sizeAxis.ts";
import type { SizeOutcome } from "../../size/sizeTally.ts";
import { figure, THIN } from "../../words/numbers.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import { sizeFields, sizeUnit, sizeValueWords } from "./sizeFields.ts";
import type { SizePicture } from "./sizePicture.ts";

/** How one direction of a map is written. */
export interface AxisWords {
  readonly title: string;
  /** Where there is no room for the whole. */
  readonly briefly?: string;
  /** Beside a value on the drawing, whose title has the unit. */
  readonly tick: (value: number) => string;
  /** In the name of a scenario and at the head of a table: "350 Ah", "3 × 200 W". */
  readonly short: (value: number) => string;
}

const COUNT = /^panels\.([^.]+)\.count$/;

/** Panels by their watts, a bank by its ampere-hours, anything else by the field's own name and unit. */
export function axisWords(document: ScenarioInput, { at }: SizeAxis): AxisWords {
  const [, id] = COUNT.exec(at) ?? [];
  const group = document.panels?.find((each) => each.id === id);
  const ratedW = group?.module?.ratedW;
  if (group !== undefined && ratedW !== undefined) {
    return {
      title: `${group.name}, W (modules of ${figure(ratedW)}${THIN}W)`,
      briefly: `${group.name}, W`,
      tick: (value) => figure(value * ratedW),
      short: (value) => `${value} × ${figure(ratedW)}${THIN}W ${group.name}`,
    };
  }
  if (at === "bank.blockAh") {
    const blocks = (document.bank.inSeries ?? 1) * (document.bank.inParallel ?? 1);
    return {
      title: blocks === 1 ? "Bank, Ah" : `One of ${blocks} blocks, Ah`,
      tick: (value) => plainFigure(value),
      short: (value) => `${blocks === 1 ? "" : `${blocks} × `}${plainFigure(value)}${THIN}Ah`,
    };
  }
  const field = sizeFields(document).find((each) => each.at === at);
  const label = field === undefined ? at : `${field.of}: ${field.label.toLowerCase()}`;
  const unit = sizeUnit(document, at);
  return {
    title: unit === "" ? label : `${label}, ${unit}`,
    tick: (value) => plainFigure(unit === "%" ? Number((100 * value).toPrecision(6)) : value),
    short: (value) => `${field?.label.toLowerCase() ?? at} ${sizeValueWords(document, at, value)}`,
  };
}

/** What a cell changes about the scenario as it stands; empty where it is that scenario. */
export function cellChanges({ report }: SizePicture, cell: SizeOutcome): Change[] {
  const { x, y } = report;
  return [
    ...(cell.x === x.present ? [] : [{ at: x.at, to: cell.x }]),
    ...(y === null || cell.y === y.present ? [] : [{ at: y.at, to: cell.y! }]),
  ];
}

/** One cell read out, with the intervals that the sample leaves open. */
export function readCell(cell: SizeOutcome, words: string): string {
  const meets = cell.meets ? "meets the target" : "misses the target";
  const open = cell.isOpen ? ", as far as this sample can tell" : "";
  return `${words.charAt(0).toUpperCase()}${words.slice(1)} holds in ${inHundred(cell.holds)} of 100 skies (${oddsRange(cell.holds)}) and goes dark in ${inHundred(cell.dark)}: ${meets}${open}.`;
}

/** The cell of a map that the scenario is now; where it lies between the values, the nearest one. */
export function presentCell({ report }: SizePicture): { row: number; column: number } {
  const nearest = (axis: SizeAxis | null) => {
    if (axis === null || axis.present === null) return 0;
    const { present } = axis;
    return axis.values.reduce(
      (best, value, k) => (Math.abs(value - present) < Math.abs(axis.values[best]! - present) ? k : best),
      0,
    );
  };
  return { row: nearest(report.y), column: nearest(report.x) };
}

/** A list of numbers as typed: "140, 280, 560"; null where something in it is none. */
export function typedValues(text: string): number[] | null {
  const parts = text.split(/[;,\s]+/).filter((part) => part !== "");
  const numbers = parts.map(Number);
  if (numbers.length === 0 || numbers.some((number) => !Number.isFinite(number))) return null;
  return [...new Set(numbers)].sort((a, b) => a - b);
}
