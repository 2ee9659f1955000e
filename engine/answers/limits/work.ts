import type { LimitOptions } from "../../checks/limitContext.ts";
import { limits } from "../../checks/limits.ts";
import { tracePrepared } from "../../run/trace.ts";
import type { Work } from "../kind.ts";
import { valueOrRefused } from "../refused.ts";
import type { LimitsPicture } from "./ask.ts";

export const workLimits: Work<LimitOptions, LimitsPicture> = async ({ documents, choices }, shop) => {
  const prepared = valueOrRefused(shop.store.prepared(await shop.open(documents[0]!)));
  return { ...limits(tracePrepared(prepared), choices), remarks: prepared.remarks };
};
