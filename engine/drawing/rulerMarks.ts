import { dateParts, dayName } from "../ruler/rulerClock.ts";
import type { TimePicture } from "../ruler/timePicture.ts";
import { frameBar } from "./frameBar.ts";
import { html, type Markup } from "./html.ts";
import { QUIET_Y_PX, RULER_PX, THREE_MARKS_PX, TICKS_PX } from "./rulerPx.ts";
import type { TimeScale } from "./timeScale.ts";

/** The ruler over a drawing: days as columns, hours, the nights filled in. */
export function rulerMarks(
  { ruler, nights, quiet }: Pick<TimePicture, "ruler" | "nights" | "quiet">,
  scale: TimeScale,
): Markup {
  const midnight = (x: number) => html`<line class="ruler-midnight" x1="${x}" x2="${x}" y1="4" y2="${RULER_PX - 6}"/>`;
  const days = ruler.days.map((day, index) => {
    const x = scale.x(day.startMs);
    const dayPx = scale.x(day.endMs) - x;
    const marks = day.marks.filter(({ hour }) => hour === 12 || scale.pxPerHour >= THREE_MARKS_PX);
    const ticks = scale.pxPerHour >= TICKS_PX ? day.hoursMs : day.marks.map(({ ms }) => ms);
    const isMarked = (ms: number) => day.marks.some((mark) => mark.ms === ms);
    return html`${midnight(x + 0.5)}<text class="ruler-day" x="${x + 8}" y="21">${
      dayPx < 64 ? String(dateParts(day.date).dayOfMonth) : dayName(day.date)
    }</text>${
      dayPx >= 110 &&
      html`<text class="ruler-number" x="${x + dayPx - 7}" y="21" text-anchor="end">${String(index + 1)}</text>`
    }${marks.map(
      ({ hour, ms }) =>
        html`<text class="ruler-hour" x="${scale.x(ms)}" y="43" text-anchor="middle">${String(hour).padStart(2, "0")}</text>`,
    )}${ticks.map(
      (ms) =>
        html`<line class="ruler-tick" x1="${scale.x(ms)}" x2="${scale.x(ms)}" y1="${isMarked(ms) ? 47 : 51}" y2="54"/>`,
    )}`;
  });
  const hushed = quiet.map(
    (span) =>
      html`<line class="ruler-quiet" x1="${scale.x(span.startMs) + 3}" x2="${scale.x(span.endMs) - 3}" y1="${QUIET_Y_PX}" y2="${QUIET_Y_PX}"/>`,
  );
  return html`${days}${hushed}${midnight(scale.widthPx - 0.5)}${frameBar(nights, scale, RULER_PX - 8)}`;
}
