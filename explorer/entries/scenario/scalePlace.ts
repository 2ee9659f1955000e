/** Where a number stands on a scale from end to end. */
export interface ScalePlace {
  /** 0 at the low end, 1 at the high end; numbers beyond are held at the ends. */
  at(value: number): number;
}

/**
 * A scale over everything that is allowed. Where the allowed reaches far beyond what is usual (1 to 3000 Ah) the upper end is
 * drawn together by a cube root, so that the usual still has room.
 */
export function scalePlace(low: number, high: number, usualHigh: number | undefined): ScalePlace {
  const isWide = low >= 0 && usualHigh !== undefined && usualHigh > 0 && high / usualHigh > 5;
  const bend = isWide ? Math.cbrt : (value: number) => value;
  return {
    at: (value) => {
      const held = Math.min(high, Math.max(low, value));
      return high === low ? 0 : (bend(held) - bend(low)) / (bend(high) - bend(low));
    },
  };
}
