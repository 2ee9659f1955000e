import { type LimitOptions, limitPlace } from "../../checks/limitContext.ts";
import { limits } from "../../checks/limits.ts";
import { tracePrepared } from "../../run/trace.ts";
import { climateOf } from "../climateOf.ts";
import type { Work } from "../kind.ts";
import { valueOrRefused } from "../refused.ts";
import type { LimitsPicture } from "./ask.ts";

export const workLimits: Work<LimitOptions, LimitsPicture> = async ({ documents, choices }, shop) => {
  const opened = await shop.open(documents[0]!);
  const prepared = valueOrRefused(shop.store.prepared(opened));
  // Typed-in weather needs no climate; how cold the place may have been is looked up all the same.
  const climate = opened.surroundings.climate ?? (await climateOf([opened.scenario]));
  const place = limitPlace(opened.scenario, climate);
  return { ...limits(tracePrepared(prepared), choices, place), remarks: prepared.remarks };
};
