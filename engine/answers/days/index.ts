/** answers/days: each day of the event in figures. What other folders may take of it. */
export { dayColumns, dayHeads, dayRows, daysCsv } from "./dayRows.ts";
export { daysKind } from "./kind.ts";
