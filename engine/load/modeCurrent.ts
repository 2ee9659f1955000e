import type { Mode, Station } from "../scenario/station.ts";

/**
 * Average RF power over peak envelope power while the key or the microphone button is down.
 * @see FCC OET Bulletin 65, Supplement B (97-01), 1997, table of duty factors; SSB and AM rows as given there
 */
export const RF_DUTY_SHARE: Record<Mode, number> = {
  ssb: 0.2,
  ssbProcessed: 0.4,
  cw: 0.4,
  fm: 1,
  rtty: 1,
  data: 1,
  am: 0.25,
};

/** Part of the time that the key is down in the standard word PARIS: 22 of 50 units. */
const CW_KEY_DOWN_SHARE = 22 / 50;

/**
 * How much of the swing from bias to peak the final draws on average, for a signal of power duty `dutyShare`.
 * A linear final's current follows the envelope and not the power: for a noise-like (Rayleigh) envelope such as speech
 * its mean is √(π/4) = 0.886 of the root mean square; √d is the bound that no envelope exceeds.
 */
function envelopeShare(dutyShare: number, rule: Station["ssbCurrent"]): number {
  if (rule === "powerDuty") return dutyShare;
  const bound = Math.sqrt(dutyShare);
  return rule === "upperBound" ? bound : Math.sqrt(Math.PI / 4) * bound;
}

/** What a radio takes on receive, at the peak of what it sends, and on average while it sends in one mode. */
export interface TransmitDraw {
  readonly receiveW: number;
  readonly peakW: number;
  /** Average while sending, watts. */
  readonly sendingW: (mode: Mode) => number;
}

/**
 * Works out a radio's draw at the power it is set to. Turned down, a linear final's current follows output voltage:
 * `I(P) = bias + (full − bias)·√(P / rated)` (class-B theory).
 * Keyed modes rest at the receive draw between elements; constant-carrier modes draw the peak all the time; SSB follows
 * the envelope; AM's carrier sits at half the peak envelope.
 */
export function transmitDraw(
  radio: { ratedW: number; receiveW: number; fullPowerW: number; biasW: number },
  transmitW: number,
  ssbCurrent: Station["ssbCurrent"],
): TransmitDraw {
  const { receiveW, fullPowerW, biasW } = radio;
  const peakW = Math.max(receiveW, biasW + (fullPowerW - biasW) * Math.sqrt(transmitW / radio.ratedW));
  const swing = (shareOfPeak: number) => biasW + (peakW - biasW) * shareOfPeak;
  const sendingW = (mode: Mode): number => {
    switch (mode) {
      case "ssb":
      case "ssbProcessed":
        return swing(envelopeShare(RF_DUTY_SHARE[mode], ssbCurrent));
      case "cw":
        return CW_KEY_DOWN_SHARE * peakW + (1 - CW_KEY_DOWN_SHARE) * receiveW;
      case "am":
        return swing(0.5);
      default:
        return peakW;
    }
  };
  return { receiveW, peakW, sendingW };
}
