import { applyChanges } from "./applyChanges.ts";
import { checkedScenario, type ReadResult, refused } from "./checkedScenario.ts";
import { withZone } from "./withZone.ts";

/** A scenario longer than this is something else by mistake. */
const LONGEST_TEXT = 1_000_000;

/**
 * Reads a scenario document, fills in what may be left out and checks that it makes sense. Nothing is thrown for a wrong
 * document: every problem found is returned, each as one sentence with the field, what was found and what is allowed.
 * @param source the JSON text (at most 1 million characters), or the value parsed from it
 * @returns the scenario with everything that was left out filled in (units end the names of its fields), or every problem
 * @throws nothing because of a document
 * @see docs/scenario-format.md for fields, units, ranges and defaults
 */
export function readScenario(source: unknown): ReadResult {
  if (typeof source === "string") {
    if (source.length > LONGEST_TEXT) {
      const size = (source.length / 1e6).toFixed(1);
      return refused(
        "too-long",
        `The document has ${size} million characters; a scenario has at most 1 million. Is it the weather file?`,
      );
    }
    try {
      return readScenario(JSON.parse(source) as unknown);
    } catch (error) {
      if (!(error instanceof SyntaxError)) throw error;
      return refused(
        "not-json",
        `The document is not JSON (${error.message}); check the comma, quote or bracket there.`,
      );
    }
  }
  return checkedScenario(withZone(source));
}

/**
 * Reads one of a scenario's variants: the scenario with the variant's changes worked in.
 * @param source the JSON text, or the value parsed from it
 * @param variantId the id of the variant in the document
 * @returns the varied scenario, named after both and without variants of its own, or every problem
 * @throws nothing because of a document
 * @see docs/scenario-format.md for how a variant's changes are written
 */
export function readVariant(source: unknown, variantId: string): ReadResult {
  const base = readScenario(source);
  if (!base.ok) return base;
  const variant = base.scenario.variants.find((each) => each.id === variantId);
  if (variant === undefined) {
    const known = base.scenario.variants.map((each) => each.id).join(", ") || "it has none";
    return refused("no-such-variant", `The scenario has no variant "${variantId}" (${known}); write one of its ids.`);
  }
  const document: unknown = typeof source === "string" ? JSON.parse(source) : source;
  const changed = applyChanges(document, variant.changes);
  if (!changed.ok) return changed;
  const result = readScenario(changed.document);
  return result.ok
    ? { ok: true, scenario: { ...result.scenario, name: `${base.scenario.name}, ${variant.name}`, variants: [] } }
    : result;
}
