import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

/** Fetches the table of zones if one of some documents leaves its zone open. Whatever is no scenario will be refused for that. */
export async function zonesFor(documents: readonly unknown[]): Promise<void> {
  const isOpen = (document: unknown) => typeof (document as Partial<ScenarioInput> | null)?.place?.zone !== "string";
  if (documents.some(isOpen)) await import("../../engine/scenario/zonesHere.ts");
}
