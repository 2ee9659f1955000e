/** answers/cautions: what can hurt somebody, as far as it is about what a scenario has. What other folders may take of it. */

export { cautionsOf } from "./cautionsOf.ts";
export { CAUTIONS, cautionTitle, LEFT_OUT, NO_PERMIT } from "./cautionWords.ts";
export { cautionsKind } from "./kind.ts";
export { reportEnd } from "./reportEnd.ts";
