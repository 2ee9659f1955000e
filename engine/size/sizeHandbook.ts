import type { CurvePoint } from "../bank/curve.ts";
import { onCurve } from "../bank/curve.ts";
import { handbookAh } from "../bank/handbookAh.ts";
import { ledger } from "../run/ledger.ts";
import type { Prepared } from "../run/prepare.ts";
import { tracePrepared } from "../run/trace.ts";

/** What a sizing by hand gives, and from what. */
export interface SizeHandbook {
  /** Ampere-hours a day: what the gear wants, over the bank's nominal volts, as handbooks count. */
  readonly dailyAh: number;
  readonly autonomyDays: number;
  readonly maxDepthShare: number;
  /** Multiplier for cold lead; 1 for lithium, whose cold the handbook does not know. */
  readonly temperatureFactor: number;
  /** Coldest that the bank gets under the stated weather, °C. */
  readonly coldestBankC: number;
  /** The whole bank, and one block of it, rated. */
  readonly bankAh: number;
  readonly blockAh: number;
}

/**
 * Multiplier on a lead bank's size against its temperature, °C (80, 70, 60, 50, 40, 30 and 20 °F): the table of battery sizing worksheets, as
 * printed by alphasolar.net, “Battery Sizing Worksheet”, and others.
 */
const LEAD_FACTOR_AGAINST_C: readonly CurvePoint[] = [
  [-6.7, 1.59],
  [-1.1, 1.4],
  [4.4, 1.3],
  [10, 1.19],
  [15.6, 1.11],
  [21.1, 1.04],
  [26.7, 1],
];

/**
 * The handbook's bank for a scenario, no sun counted: daily ampere-hours from the ledger, times days, over the depth that the
 * reserve leaves. No margin for what is not known is added; handbooks add 10 to 25 %.
 * @param prepared the scenario as it stands; its panels and obstacles do not matter
 * @param autonomyDays days to be bridged without charge, 0.1…60
 * @throws RangeError if the days leave that range
 */
export function sizeHandbook(prepared: Prepared, autonomyDays: number): SizeHandbook {
  if (!(autonomyDays >= 0.1 && autonomyDays <= 60)) {
    throw new RangeError(`autonomyDays must lie in 0.1…60, got ${autonomyDays}`);
  }
  const { bank } = prepared.scenario;
  const { wantedWh, hours } = ledger(tracePrepared(prepared));
  const dailyAh = ((wantedWh / hours) * 24) / bank.nominalV;
  const coldestBankC = prepared.bank.tempC.reduce((coldest, temp) => Math.min(coldest, temp), Number.POSITIVE_INFINITY);
  const temperatureFactor = bank.chemistry === "lfp" ? 1 : onCurve(LEAD_FACTOR_AGAINST_C, coldestBankC);
  const maxDepthShare = 1 - bank.reserveShare;
  const bankAh = handbookAh({
    dailyAh,
    autonomyDays,
    maxDepthShare,
    endOfLifeShare: bank.healthShare,
    temperatureFactor,
  });
  return {
    dailyAh,
    autonomyDays,
    maxDepthShare,
    temperatureFactor,
    coldestBankC,
    bankAh,
    blockAh: bankAh / bank.inParallel,
  };
}
