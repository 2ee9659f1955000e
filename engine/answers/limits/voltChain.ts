import type { RadioAtPeak } from "../../checks/limits.ts";

/** One row of the way from the bank's cells to a radio's socket. */
export interface ChainRow {
  readonly name: string;
  readonly kind: "bank" | "link" | "weak" | "radio";
  /** Volts before and after it; of bank and radio, their own. */
  readonly fromV: number;
  readonly toV: number;
}

/** Room under the lowest volts, as a share of what is drawn. */
const FOOT_SHARE = 0.15;

/** The volts of a radio's worst moment, from the bank at rest down to the radio, and the scale on which they are drawn. */
export function voltChain(radio: RadioAtPeak, openV: number) {
  let atV = openV;
  const links = radio.links.map((link): ChainRow => {
    const fromV = atV;
    atV -= link.lostV;
    return { name: link.link, kind: link.link === radio.weakLink.link ? "weak" : "link", fromV, toV: atV };
  });
  const rows: ChainRow[] = [
    { name: "bank at rest", kind: "bank", fromV: openV, toV: openV },
    ...links,
    { name: "at the radio", kind: "radio", fromV: radio.radioV, toV: radio.radioV },
  ];
  const lowest = Math.min(radio.radioV, radio.minimumV);
  const lowV = lowest - FOOT_SHARE * Math.max(0.2, openV - lowest);
  /** Where volts lie, as a share of the room from left to right. */
  const place = (volts: number) => Math.min(1, Math.max(0, (volts - lowV) / (openV - lowV)));
  return { rows, place };
}
