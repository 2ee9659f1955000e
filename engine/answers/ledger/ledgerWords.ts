import { energy, percent } from "../../words/numbers.ts";
import type { RunPicture } from "../run/runPicture.ts";

/** "5.17 kWh in all, 40 % of it always on" */
export function ledgerWords({ ledger }: RunPicture): string {
  const { alwaysWh, usedWh } = ledger;
  const always = alwaysWh + usedWh > 0 ? alwaysWh / (alwaysWh + usedWh) : 0;
  return `${energy(alwaysWh + usedWh)} in all, ${percent(always)} of it always on`;
}
