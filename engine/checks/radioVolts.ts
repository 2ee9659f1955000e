/** A bank under a transmit peak. */
export interface PeakChain {
  /** Open-circuit volts of the bank at the charge in question; the converter's output where there is one. */
  readonly openV: number;
  /** Current of everything at the bank, A, with its resistances: pack, main feed. */
  readonly siteA: number;
  readonly packOhm: number;
  readonly mainCableOhm: number;
  readonly mainContactsOhm: number;
  /** Current of the radio alone, A, with its lead and its contacts. */
  readonly radioA: number;
  readonly leadOhm: number;
  readonly leadContactsOhm: number;
}

/** One link between the bank's cells and the radio's socket. */
export interface LostVolts {
  readonly link: "pack" | "main cable" | "main fuse and switch" | "lead" | "fuse and plugs of the lead";
  readonly lostV: number;
}

/** Volts at a radio's socket and where the rest went. */
export interface RadioVolts {
  readonly radioV: number;
  readonly links: readonly LostVolts[];
  /** The link that takes most; the first of equals. */
  readonly weakLink: LostVolts;
}

/** Volts at the radio on a peak: E − I·(pack + main) − Iradio·(lead + contacts). */
export function radioVolts(chain: PeakChain): RadioVolts {
  const links: LostVolts[] = [
    { link: "pack", lostV: chain.siteA * chain.packOhm },
    { link: "main cable", lostV: chain.siteA * chain.mainCableOhm },
    { link: "main fuse and switch", lostV: chain.siteA * chain.mainContactsOhm },
    { link: "lead", lostV: chain.radioA * chain.leadOhm },
    { link: "fuse and plugs of the lead", lostV: chain.radioA * chain.leadContactsOhm },
  ];
  const weakLink = links.reduce((worst, each) => (each.lostV > worst.lostV ? each : worst));
  return { radioV: chain.openV - links.reduce((sum, each) => sum + each.lostV, 0), links, weakLink };
}
