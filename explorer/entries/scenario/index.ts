/**
 * scenario: a scenario's fields on the page: the form follows the schema, a list's items are added, copied, switched to another kind.
 */

export { scenarioEntry } from "./entry.ts";
export { copyOfItem, newItem } from "./newItem.ts";
export { referenceChanges } from "./references.ts";
export { ScenarioEditor } from "./ScenarioEditor.tsx";
export { scalePlace } from "./scalePlace.ts";
export { switchKind } from "./switchKind.ts";
export { usualValues } from "./usualValues.ts";
