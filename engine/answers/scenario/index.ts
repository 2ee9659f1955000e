/** answers/scenario: a scenario, or what one changes of another. What other folders may take of it. */
export { changesOf } from "./changesOf.ts";
export { scenarioKind } from "./kind.ts";
export { scenarioFigures } from "./scenarioFigures.ts";
export { scenarioWords } from "./scenarioWords.ts";
