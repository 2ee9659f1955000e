import * as z from "zod";
import { kind } from "../kind.ts";

/** What is left out, and what can hurt. */
export const cautionsKind = kind({
  doc: z.strictObject({}),
  scenarios: () => [],
  asks: () => [],
  first: () => ({ title: "What this leaves out, and cautions", doc: {} }),
  tell: () => import("./tell.ts").then(({ tellCautions }) => tellCautions),
});
