/**
 * How far readings are off where nobody says otherwise, as standard deviations. Common practice, no source, except for the sky:
 * a counter of ampere-hours that was set at full is good to a few percent after a day; a panel meter jumps with each cloud.
 */
export const METER_ERROR = {
  /** Of a charge in percent, share of a full bank. */
  chargeShare: 0.03,
  /** Of ampere-hours out: share of a full bank, and share of what went out; they add as squares. */
  outFullShare: 0.01,
  outCountedShare: 0.03,
  /** Of resting volts, V for each nominal 12 V: an hour's rest is not a day's, and meters differ by a digit or two. */
  restVPer12V: 0.05,
  /** Of the panels' power: share of what is read, and share of their rating. */
  panelsShare: 0.25,
  panelsRatedShare: 0.04,
  /** Of the load: share of what is read, and amperes. */
  loadShare: 0.1,
  loadA: 0.3,
  /**
   * Of a word for a day's sky, as clear-sky index: single hours stray from the mean of their cloud by 0.1 to 0.2.
   * @see F. Kasten and G. Czeplak, Solar Energy 24 (1980) 177–189 (from memory)
   */
  skyIndex: 0.15,
} as const;

/** Readings of one kind within so many hours share one error: a meter that is off is off for all of them. */
export const SHARED_ERROR_H = 1;
