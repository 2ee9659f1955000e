import fc from "fast-check";
import type { QuantityFacts } from "../../../engine/scenario/quantity.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { type SchemaNode, scenarioInputSchema } from "../../../engine/scenario/scenarioSchema.ts";
import { arbitraryScenario } from "../arbitraryScenario.ts";

const schema = scenarioInputSchema();

/** A number that stands in a document, or could: where, and what it may be. */
interface NumberPlace {
  readonly holder: Record<string, unknown>;
  readonly key: string;
  readonly facts: QuantityFacts;
  readonly isWhole: boolean;
}

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The forms that a part may have, its choices laid open. */
function formsOf(node: SchemaNode): SchemaNode[] {
  return [node, ...[...(node.anyOf ?? []), ...(node.oneOf ?? [])].flatMap(formsOf)];
}

/** Every number in a part of a document, and every one that is left out there. */
function numberPlaces(value: unknown, node: SchemaNode): NumberPlace[] {
  const forms = formsOf(node);
  if (Array.isArray(value)) {
    const items = forms.flatMap(({ items }) => (items === undefined ? [] : [items]));
    return value.flatMap((item) => items.flatMap((each) => numberPlaces(item, each)));
  }
  if (!isGroup(value)) return [];
  const form = forms.find(({ properties = {} }) => {
    const isKind = properties.kind?.const === undefined || properties.kind.const === value.kind;
    return (
      isKind && Object.keys(properties).length > 0 && Object.keys(value).every((key) => Object.hasOwn(properties, key))
    );
  });
  return Object.entries(form?.properties ?? {}).flatMap(([key, inner]): NumberPlace[] => {
    const number = formsOf(inner).find(({ quantity }) => quantity !== undefined);
    if (number === undefined) return numberPlaces(value[key], inner);
    return [{ holder: value, key, facts: number.quantity!, isWhole: number.type === "integer" }];
  });
}

/** One number taken to an end of its range, or anywhere between. */
const move = fc.record({
  place: fc.nat(),
  share: fc.oneof(fc.constantFrom(0, 1, 0.5, 1e-6, 1 - 1e-6), fc.double({ min: 0, max: 1, noNaN: true })),
});

function moved(input: ScenarioInput, moves: readonly { place: number; share: number }[]): ScenarioInput {
  const document = structuredClone(input);
  for (const { place, share } of moves) {
    const places = numberPlaces(document, schema);
    const { holder, key, facts, isWhole } = places[place % places.length]!;
    const value = facts.low + share * (facts.high - facts.low);
    holder[key] = isWhole ? Math.round(value) : value;
  }
  return document;
}

/** Weather that the arbitrary scenario never has: the climate's own, with nothing typed in. */
const ownClimate = fc.option(fc.constant({ kind: "typical" as const }), { nil: undefined, freq: 3 });

/** Scenarios with numbers at and near the ends of what the format allows; some contradict themselves, and are refused in words. */
export const extremeScenario: fc.Arbitrary<ScenarioInput> = fc
  .record({ input: arbitraryScenario, weather: ownClimate, moves: fc.array(move, { maxLength: 5 }) })
  .map(({ input, weather, moves }) => moved(weather === undefined ? input : { ...input, weather }, moves));
