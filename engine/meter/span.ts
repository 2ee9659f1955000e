/** A length of time in words: "40 s", "12 min", "3.5 h", "2.1 days". */
export function span(ms: number): string {
  if (ms < 90_000) return `${Math.round(ms / 1000)} s`;
  if (ms < 90 * 60_000) return `${Math.round(ms / 60_000)} min`;
  if (ms < 48 * 3_600_000) return `${+(ms / 3_600_000).toFixed(1)} h`;
  return `${+(ms / 86_400_000).toFixed(1)} days`;
}
