import { currentSign } from "./currentSign.ts";
import { finding } from "./finding.ts";
import type { MeterFinding, MeterLog } from "./meterLog.ts";
import type { MeterMapping } from "./meterMapping.ts";

type Sign = NonNullable<MeterMapping["currentSign"]>;

/** How current into the bank is written: as the mapping says, or as the log shows; null where neither does. */
export function flowSign(
  said: Sign | undefined,
  flow: Float64Array,
  { chargeShare, pvW, bankV }: Pick<MeterLog, "chargeShare" | "pvW" | "bankV">,
): { readonly sign: Sign; readonly findings: readonly MeterFinding[] } | null {
  const seen = currentSign(flow, chargeShare, pvW, bankV);
  if (said === undefined) {
    if (seen === null) return null;
    const how = seen === "chargingPositive" ? "above" : "below";
    const message = `Current into the bank is written ${how} 0, as charge, sun or volts in the log show.`;
    return { sign: seen, findings: [finding("sign-found", message)] };
  }
  if (seen === null || seen === said) return { sign: said, findings: [] };
  const message = `The mapping says ${said}, but charge, sun or volts in the log go the other way.`;
  return { sign: said, findings: [finding("sign-doubtful", message, 0, null, { currentSign: seen })] };
}
