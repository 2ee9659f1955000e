const MONTHS = 12;

/**
 * Twelve monthly means as a course without steps, read at each day: straight from the middle of one month to the middle
 * of the next, through values chosen so that each month keeps its mean.
 * @param monthly January first
 * @param dates local dates, "2026-10-08"
 */
export function monthlyCourse(monthly: readonly number[], dates: readonly string[]): Float64Array {
  const at = middleValues(monthly);
  return Float64Array.from(dates, (date) => {
    const [year, month, day] = date.split("-").map(Number) as [number, number, number];
    const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
    const place = month - 1 + (day - 0.5) / days - 0.5; // 0 in the middle of January
    const left = Math.floor(place);
    const share = place - left;
    return (1 - share) * at[(left + MONTHS) % MONTHS]! + share * at[(left + 1) % MONTHS]!;
  });
}

/** A straight course through `at` has the month's mean (at before + 6 at + at after) / 8; solved for `at`. */
function middleValues(monthly: readonly number[]): Float64Array {
  let at = Float64Array.from(monthly);
  for (let round = 0; round < 60; round++) {
    at = at.map((_, m) => (8 * monthly[m]! - at[(m + MONTHS - 1) % MONTHS]! - at[(m + 1) % MONTHS]!) / 6);
  }
  return at;
}
