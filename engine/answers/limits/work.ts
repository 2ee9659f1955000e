import { type LimitOptions, limitPlace } from "../../checks/limitContext.ts";
import { limits } from "../../checks/limits.ts";
import { dateSpan } from "../../ruler/rulerClock.ts";
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
  const { scenario, grid, remarks } = prepared;
  const when = dateSpan({ days: grid.dates.map((date) => ({ date })) });
  const sheetOf = { plan: scenario.name, place: scenario.place.name, when };
  return { ...limits(tracePrepared(prepared), choices, place), remarks, sheetOf };
};
