/** A rule in words, and who says so. */
export interface LimitRule {
  readonly words: string;
  readonly source: string;
}

/** Looked up in public text and not in the standard itself. */
const SECOND_HAND = "as quoted in public text: read the standard and your local code";
const FROM_MEMORY = "not found in public text, from memory: read the standard and your local code";

/**
 * Every rule that a line may rest on. They are American and marine rules for lack of one for clubs in tents: a sober measure,
 * not the law where you stand.
 */
export const LIMIT_RULES = {
  bankPeak: {
    words:
      "All that may send together at its peak, with everything else on, stays within what the bank gives for seconds; its continuous rating counts where no peak is stated.",
    source: "the bank's label; where none is stated 1 A per Ah (LFP) or 3 A per Ah (lead), common practice, no source",
  },
  bankContinuous: {
    words: "What lasts ten minutes and more stays within the bank's continuous rating.",
    source: "the bank's label; ten minutes: see the fuses",
  },
  bankCut: {
    words: "On the worst peak at the lowest forecast charge the bank stays above the volts at which loads are cut off.",
    source: "common practice, no source: a disconnect without delay trips on a transmit peak",
  },
  fuseCarries: {
    words:
      "A fuse or breaker is rated above the greatest peak, and for 1.25 times what lasts: a transmission counts by its length, in full from ten minutes on or where none is stated, and not by its mean over hours.",
    source: `the factor: NEC 210.20(A) and 215.3, ${SECOND_HAND}, for what flows three hours and more (article 100); ten minutes instead is our choice, for a fuse must open within the hour at 135 % and within 2 to 4 minutes at twice its rating (UL 248-14, in a fuse maker's selection guide); that it must carry a key-down peak is common practice, no source`,
  },
  fuseForWire: {
    words:
      "A fuse protects its wire: no larger than the wire carries in the warmest air of the event, nor than 7, 10, 15, 20 and 30 A for 18 to 10 AWG.",
    source: `NEC 240.4 and 240.4(D) with table 310.16 (75 °C), sizes in mm² by BS 7671 table 4D1A method B (IEC 60364-5-52 B1), ${SECOND_HAND}`,
  },
  fuseForGear: {
    words: "A fuse is no larger than the smallest of wire, switch, holder and distribution behind it.",
    source: `NEC 240.4, ${SECOND_HAND}; 110.3(B) (gear is used as it is rated and listed), ${FROM_MEMORY}`,
  },
  panelLow: {
    words:
      "A controller that only steps down charges while the string's volts at the power point, warm in the sun, stay above the bank's charging volts.",
    source:
      "common practice, no source; the module's volts fall by its coefficient, cells taken 30 K above the event's warmest air",
  },
  wireCarries: {
    words:
      "A wire carries the greatest peak, and 1.25 times what lasts ten minutes and more, in the warmest air of the event.",
    source: `NEC 210.19(A) and 215.2 with table 310.16 (75 °C), sizes in mm² by BS 7671 table 4D1A method B (IEC 60364-5-52 B1), ${SECOND_HAND}`,
  },
  fuseNear: {
    words: "The main fuse sits within 18 cm of the bank's post; within 1.83 m where the lead runs in a sheath.",
    source:
      "33 CFR 183.455 (7 in; 40 in sheathed) and ABYC E-11 (7 in; 72 in sheathed at a battery post); NEC 240.21(H): as near as practicable",
  },
  fuseBreaks: {
    words:
      "The main fuse can interrupt what the full bank drives into a dead short: the maker's figure; else 20 kA for lithium, and for lead the open volts when full over its least resistance.",
    source: `ABYC E-11 and E-13 (lithium: maker's figure or 20 kA), ${SECOND_HAND}`,
  },
  ratingHolds: {
    words:
      "A switch, a bus bar or a converter is rated for the greatest peak, and switch and bar for 1.25 times what lasts ten minutes and more.",
    source: `NEC 404.14 and 110.14(C) in spirit, ${FROM_MEMORY}`,
  },
  drop: {
    words: "The run drops no more than the target share of its volts at its peak current, out and back.",
    source: "ABYC E-11: 3 % for critical feeds, 10 % for others; NEC 210.19 note: 3 % a branch (advice)",
  },
  radioVolts: {
    words:
      "On the worst transmit peak, at the lowest forecast charge, the radio's socket keeps its least volts: 13.8 V less 15 % unless stated.",
    source: "makers' ±15 % as quoted in “HF Transceivers and Battery Operation”, 2009; Ohm's law",
  },
  panelVolts: {
    words:
      "Open-circuit volts of a string on the coldest morning of the place, by the sheet's coefficient or the code's table, whichever is more, stay under what the controller's input stands. The climate tables carry no record: it is estimated from the mean of the coldest month, and lowered until nine records in ten lie above.",
    source: `NEC 690.7(A); its table met again only in a permit program, else from memory: read the standard and your local code. Coldest morning: BIOME4's rule for the absolute minimum (Kaplan and others 2003, after Prentice and others 1992), looked up in public notes on that model; records of stations from memory`,
  },
  panelAmps: {
    words: "1.25 times the short-circuit current of all strings stays within what the controller's input stands.",
    source: "NEC 690.8(A)(1): 8.8 A gives 11.0 A (trade article, “PV Circuit Sizing & Current Calculations”)",
  },
  panelWire: {
    words: "The wire from the panels carries 1.25 × 1.25 = 1.56 times the short-circuit current of all strings.",
    source:
      "NEC 690.8(B): 9.2 A gives 11.5 A and 14.4 A (a kit maker's manual); quoted in IAEI Magazine, “Considering Clarified Cable Calculations”",
  },
  controllerWatts: {
    words: "Rated watts over the bank's lowest volts stay within the controller's charging current.",
    source: "common practice, no source: 400 W at 13 V are 31 A; a tracking controller holds back, a plain one may not",
  },
  seriesFuse: {
    words:
      "What the other strings can drive back into a shaded one, 1.25 times their short-circuit current, stays within the module's series-fuse rating; else each string has a fuse.",
    source: `NEC 690.9(A) and its exception, and 1.56 times for a string's own fuse, ${SECOND_HAND} (trade article, “Why Series Fusing?”)`,
  },
  controllerFuse: {
    words:
      "The fuse between a controller or charger and the bank carries 1.25 times the most that it is rated to give.",
    source: `NEC 690.9(B), ${SECOND_HAND}`,
  },
  chargeRate: {
    words:
      "What panels in full sun, no shade on them, and chargers can give at once, with the loads off, stays within what the bank may take at that hour's temperature.",
    source:
      "the bank's label; where none is stated 0.5 A per Ah (LFP), 0.25 (AGM), 0.13 (flooded; C/4 and C/8 of a dealer's battery FAQ), and for cold LFP 0.1 A per Ah to 5 °C, 0.2 to 10 °C (manuals of LFP packs)",
  },
  coldCharge: {
    words: "No charger is on while the bank is at or below the temperature at which it may not be charged.",
    source: "manuals of LFP packs: no charging at or below 0 °C; common practice",
  },
  parallelStrings: {
    words:
      "No more than four strings side by side: same make, age and size, joined when all are full and within 0.2 V, each behind its own fuse, with leads of one length and the load taken across the corners.",
    source:
      "installation manuals of LFP packs (one asks for 0.2 V between strings, others for 0.05 V); the count is common practice, no source",
  },
  lostBlock: {
    words: "If one string's electronics cut it off, the others carry the peak alone, and so do their fuses.",
    source: "common practice, no source; by the bank's rating, shared evenly",
  },
} as const satisfies Readonly<Record<string, LimitRule>>;
