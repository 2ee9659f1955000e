import { toGrid } from "../grid.ts";
import { r1OfKt, sdOfKt } from "../place/clearnessLaws.ts";
import type { SiteClimate } from "../place/climateAt.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { clearnessOfGhi } from "../sky/clearnessOfGhi.ts";
import type { MonthlyClearness } from "../sky/dailyClearness.ts";

/** Whether somebody has typed in how bright months are on average. */
export function isMeanTyped({ weather }: Scenario): boolean {
  return weather.kind === "typical" && (weather.monthlyKt !== undefined || weather.monthlyGhiKwhM2 !== undefined);
}

/**
 * Mean, spread and memory of daily clearness as the scenario states them; what it leaves out is that of the climate tables, or where
 * there are none, as the fits on all stations have it for the stated mean.
 * @param climate null where the scenario states the means and no tables were given
 */
export function statedClearness(scenario: Scenario, climate: SiteClimate | null): MonthlyClearness {
  const { weather, place } = scenario;
  if (weather.kind !== "typical") return { kt: climate!.kt, sd: climate!.sd, r1: climate!.r1 };
  const kt =
    weather.monthlyKt ??
    (weather.monthlyGhiKwhM2 === undefined ? climate!.kt : clearnessOfGhi(weather.monthlyGhiKwhM2, place.latitudeDeg));
  return {
    kt,
    sd: weather.monthlyKtSd ?? climate?.sd ?? kt.map((mean, month) => toGrid(sdOfKt(mean, place.latitudeDeg, month))),
    r1: weather.monthlyKtR1 ?? climate?.r1 ?? kt.map((mean) => toGrid(r1OfKt(mean))),
  };
}
