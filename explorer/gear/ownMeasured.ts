import { ownStore } from "../store/ownStore.ts";
import { makeMeasured } from "./makeMeasured.ts";

/** What the person at this browser measured: one for the whole page. */
export const measured = makeMeasured(ownStore(), () => new Date().toISOString().slice(0, 10));
