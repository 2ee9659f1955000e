import { runDrivers } from "../../drivers/runDrivers.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { DriversPicture } from "./driversPicture.ts";

const STRETCH_ROWS = 25;

export const workDrivers: Work<object, DriversPicture> = async ({ documents, seed, members }, shop) => {
  const ensemble = shop.ensemble(await shop.start(documents[0]!, seed, members));
  const run = await runDrivers(shop.pool, { ...ensemble, surroundings: shop.sent(ensemble.surroundings) }, members, {
    signal: shop.signal,
    fewest: STRETCH_ROWS,
    most: STRETCH_ROWS,
    onProgress: (done) => shop.tick(0, done),
  });
  if (!run.ok) throw new Refused(run.problems);
  return { report: run.part, remarks: ensemble.remarks };
};
