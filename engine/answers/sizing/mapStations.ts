import { applyChanges } from "../../scenario/applyChanges.ts";
import type { ScenarioInput } from "../../scenario/scenario.ts";
import type { SizeReport } from "../../size/sizeReport.ts";
import type { AnswersPage } from "../answersPage.ts";

/** A scenario of the notebook that lies on a map, at its two numbers. */
export interface MapStation {
  readonly x: number;
  readonly y: number;
  readonly name: string;
}

/** Scenarios of the notebook that differ from the one that is sized in nothing but the map's two numbers; that one is among them. */
export function mapStations(
  page: Pick<AnswersPage, "scenarios" | "document">,
  sized: ScenarioInput,
  { x, y }: Pick<SizeReport, "x" | "y">,
): MapStation[] {
  if (y === null || x.present === null || y.present === null) return [];
  const held = [
    { at: x.at, to: x.present },
    { at: y.at, to: y.present },
  ];
  const own = without(sized, held);
  return page.scenarios().flatMap(({ id, name }) => {
    const other = page.document(id);
    if (other === null || without(other, held) !== own) return [];
    const [there, above] = [numberAt(other, x.at) ?? x.present!, numberAt(other, y.at) ?? y.present!];
    return isOn(there, x.values) && isOn(above, y.values) ? [{ x: there, y: above, name }] : [];
  });
}

/** What a document says but for the map's two numbers, its name and its note. */
function without(from: ScenarioInput, held: { at: string; to: number }[]): string {
  const changed = applyChanges(from, held);
  const { name: _, note: __, ...rest } = (changed.ok ? changed.document : from) as ScenarioInput;
  return JSON.stringify(rest);
}

const isOn = (value: number, values: readonly number[]) => value >= values[0]! && value <= values.at(-1)!;

function numberAt(document: ScenarioInput, at: string): number | null {
  let value: unknown = document;
  for (const name of at.split(".")) {
    if (Array.isArray(value)) value = value.find((item: { id?: unknown }) => item?.id === name);
    else value = (value as Record<string, unknown> | undefined)?.[name];
  }
  return typeof value === "number" ? value : null;
}
