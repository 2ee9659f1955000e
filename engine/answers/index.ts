/**
 * answers: what can be asked of scenarios, one folder for each kind of entry. `ask.ts` says what is asked, `work.ts` works it out with
 * what is scarce (`shop.ts`), `tell.ts` tells it: sentence, tables, drawing, slide, its part of a report. `kinds.ts` is the one list.
 */
export type { AnswersPage } from "./answersPage.ts";
export type { Asked, Want } from "./asked.ts";
export type { Found } from "./found.ts";
export type { Kind, Question, Tell } from "./kind.ts";
export { KIND_NAMES, kindOf } from "./kinds.ts";
export { makeShop } from "./makeShop.ts";
export { wantOf } from "./wantOf.ts";
