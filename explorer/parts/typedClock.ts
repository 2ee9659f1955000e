const CLOCK = /^[0-2]?\d[:.h]?\d\d$/;

/** "9:30", "0930" and "9" as the clock writes them: "09:30", "09:00"; anything else as it was typed. */
export function typedClock(text: string): string {
  const bare = text.trim().replace(/h$/i, "").trimEnd();
  if (/^\d{1,2}$/.test(bare)) return `${bare.padStart(2, "0")}:00`;
  if (!CLOCK.test(bare)) return text.trim();
  const digits = bare.replace(/\D/g, "").padStart(4, "0");
  return `${digits.slice(0, 2)}:${digits.slice(2)}`;
}

/** A time of day, moved by an arrow key. */
export function clockStep(text: string, direction: number, isLarge: boolean): string {
  const [h, m] = typedClock(text).split(":").map(Number);
  const minute = (h ?? 0) * 60 + (m ?? 0);
  const by = isLarge ? 60 : 15;
  const to = Math.min(1440, Math.max(0, (Math.round(minute / by) + direction) * by));
  return `${String(Math.floor(to / 60)).padStart(2, "0")}:${String(to % 60).padStart(2, "0")}`;
}
