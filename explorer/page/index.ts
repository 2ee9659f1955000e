/**
 * page: the sheet and the shelf: frames round entries, head, index, foot, keys, and files that are dropped.
 */
export { Framed } from "./Framed.tsx";
export { NewNotebook } from "./NewNotebook.tsx";
export { type OpenedNotebook, Sheet } from "./Sheet.tsx";
export { SheetFailed } from "./SheetFailed.tsx";
export { Shelf } from "./Shelf.tsx";
export { withScenarioFile, withWeatherFile } from "./takeIntoNotebook.ts";
