import type { PreparedEnsemble } from "../../ensemble/prepareEnsemble.ts";
import type { Bands, OddsReport } from "../../odds/odds.ts";
import { type TimePicture, timePicture } from "../../ruler/timePicture.ts";

/** An ensemble as the page shows it: plain numbers that a worker can hand over. */
export interface OddsPicture extends TimePicture {
  readonly members: number;
  readonly fullAh: number;
  readonly reserveShare: number;
  readonly report: Omit<OddsReport, "charge" | "solarW" | "loadW">;
  readonly charge: Bands;
  readonly solarW: Bands;
  readonly loadW: Bands;
  readonly remarks: readonly string[];
}

/** Takes from an ensemble what the page shows. */
export function oddsPicture(ensemble: PreparedEnsemble, odds: OddsReport): OddsPicture {
  const { charge, solarW, loadW, ...report } = odds;
  return {
    ...timePicture(ensemble),
    members: odds.members,
    fullAh: ensemble.prepared.bank.fullAh,
    reserveShare: odds.reserveShare,
    report,
    charge,
    solarW,
    loadW,
    remarks: ensemble.remarks,
  };
}
