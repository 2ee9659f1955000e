/**
 * parts: pieces that several screens share: fields that take what is typed, progress, problems in words, light and units.
 */
export { CsvButton } from "./CsvButton.tsx";
export { changeWords } from "./changeWords.ts";
export { DocNumberBox } from "./DocNumberBox.tsx";
export { Problems, Progress } from "./EntryState.tsx";
export { FileButton } from "./FileButton.tsx";
export { fadesWhile } from "./fadesWhile.ts";
export { firstAnswer, tellFirstAnswer } from "./firstAnswer.ts";
export { elementId, type Form, FormProvider, isChanged, problemsAt, useForm, wasAt } from "./formContext.ts";
export { likelyMeant } from "./likelyMeant.ts";
export { LATE_MS, makeLasting } from "./makeLasting.ts";
export { LIGHT_WORDS, makeTheme } from "./makeTheme.ts";
export { makeWidth } from "./makeWidth.ts";
export { NotMade } from "./NotMade.tsx";
export { changesOf, planGroups, planOf } from "./plan.ts";
export { problemPlace, problemSentence } from "./problemPlace.ts";
export { QuickFields } from "./QuickFields.tsx";
export { Refused } from "./Refused.tsx";
export { SaidWords } from "./SaidWords.tsx";
export { ScenarioChoice } from "./ScenarioChoice.tsx";
export { TypedBox } from "./TypedBox.tsx";
export { clockStep, typedClock } from "./typedClock.ts";
export { arrowStep, typedQuantity, typedWithUnit } from "./typedQuantity.ts";
export { UnitsChoice } from "./UnitsChoice.tsx";
export { WarningSign, WrongLines } from "./WrongLines.tsx";
export { whyInWords } from "./whyInWords.ts";
export { wrongInWords } from "./wrongInWords.ts";
