import { THIN } from "../../words/numbers.ts";
import { type SunHours, sunDays, usualDay } from "./sunHours.ts";
import type { Sunlight } from "./sunlight.ts";

/** "1.1 h": a tenth of an hour is six minutes, as fine as a tree stands still. */
export const tenthHours = (h: number) => `${h.toFixed(1)}${THIN}h`;

/** What the site does to each group, as one sentence. */
export function shadeVerdict(light: Sunlight): string {
  if (light.groups.length === 0) return "No panels stand on the site, so nothing here has sun to lose.";
  const said = light.groups.map((group, g) => {
    const day = usualDay(sunDays(light, group));
    const open = `${group.name}: ${day.openH < 0.05 ? "no open sun" : `${tenthHours(day.openH)} of open sun`}`;
    const when = day.isMean
      ? `on an average day of ${tenthHours(day.upH)}`
      : `in the event's ${tenthHours(day.upH)} of daylight`;
    return `${open}${g === 0 ? ` ${when}` : ""}${partWords(day)}`;
  });
  return `${said.join("; ")}.`;
}

function partWords(day: SunHours): string {
  const words = [
    ...(day.partH < 0.05
      ? []
      : [`leaves and edges let through ${day.partWorthH.toFixed(1)} of ${tenthHours(day.partH)}`]),
    ...(day.darkH < 0.05 ? [] : [`dark for ${tenthHours(day.darkH)}`]),
    ...(day.awayH < 0.05 ? [] : [`put away or turned from the sun for ${tenthHours(day.awayH)}`]),
  ];
  return words.map((text) => `, ${text}`).join("");
}

/** "1.1 h open, 3.0 in part" */
export function rowWords(day: SunHours): string {
  return `${tenthHours(day.openH)} open${day.partH < 0.05 ? "" : `, ${day.partH.toFixed(1)} in part`}`;
}

/** A name cut into at most two lines of so many letters; what still has no room ends in an ellipsis. */
export function nameLines(name: string, letters: number): string[] {
  if (name.length <= letters) return [name];
  const space = name.lastIndexOf(" ", letters);
  const cutAt = space > 0 ? space : letters;
  const rest = name.slice(cutAt).trim();
  return [name.slice(0, cutAt), rest.length <= letters ? rest : `${rest.slice(0, letters - 1)}…`];
}
