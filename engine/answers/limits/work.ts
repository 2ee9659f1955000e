import type { LimitOptions } from "../../checks/limitContext.ts";
import { type LimitsReport, limits } from "../../checks/limits.ts";
import { tracePrepared } from "../../run/trace.ts";
import type { Work } from "../kind.ts";
import { valueOrRefused } from "../refused.ts";

export const workLimits: Work<LimitOptions, LimitsReport> = async ({ documents, choices }, shop) =>
  limits(tracePrepared(valueOrRefused(shop.store.prepared(await shop.open(documents[0]!)))), choices);
