import { runSpots, SpotsRefused } from "../../spots/runSpots.ts";
import { spotsPlan } from "../../spots/spotsPlan.ts";
import type { SpotsReport } from "../../spots/spotsReport.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { SpotsChoices } from "./ask.ts";
import type { SpotsPicture } from "./spotsPicture.ts";

export const workSpots: Work<SpotsChoices, SpotsPicture> = async ({ documents, choices }, shop) => {
  const { scenario, surroundings } = await shop.open(documents[0]!);
  const ready = spotsPlan(scenario, choices.group);
  if (!ready.ok) throw new Refused(ready.problems);
  const { plan } = ready;
  const { grid, group } = plan;
  const picture = (report: SpotsReport): SpotsPicture => ({
    report,
    group,
    obstacles: scenario.obstacles,
    others: scenario.panels
      .filter(({ id, count }) => count > 0 && id !== group.id)
      .map(({ name, at }) => ({ name, eastM: at.eastM, northM: at.northM })),
    sky: scenario.weather.kind,
    window: {
      westM: grid.westM,
      eastM: grid.westM + (grid.columns - 1) * grid.stepM,
      southM: grid.southM,
      northM: grid.southM + (grid.rows - 1) * grid.stepM,
    },
  });
  const report = await runSpots(plan, {
    pool: shop.pool,
    surroundings: shop.sent(surroundings),
    signal: shop.signal,
    early: (known) => shop.early(picture(known)),
  }).catch((error: unknown) => {
    throw error instanceof SpotsRefused ? new Refused(error.problems) : error;
  });
  return picture(report);
};
