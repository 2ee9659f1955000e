/**
 * entries: what each kind of entry adds that needs a screen. `list.ts` is the one place that names them all; what a kind asks and answers
 * stands in engine/answers.
 */
export { ENTRY_KINDS, entryKindOf } from "./list.ts";
