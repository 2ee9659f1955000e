import * as z from "zod";
import { ClockWindows } from "./clockWindow.ts";
import { Draw } from "./draw.ts";
import { Lead } from "./lead.ts";
import { PRESENCE } from "./presence.ts";
import { count, id, share, text, word } from "./quantity.ts";

/** When a thing works; the rest of the time it takes its idle draw. */
const Use = z
  .strictObject({
    when: word(
      ["always", "byTheClock", "afterDark", "whenStaffed"],
      "always; in stretches of the clock; while the sun is down; while a station is staffed",
    ).meta({ label: "Works", choices: { whenStaffed: "while staffed" } }),
    windows: ClockWindows.min(1, { error: "a list with at least one stretch of the clock" })
      .optional()
      .meta({
        label: "By the clock",
        onlyWith: { when: "byTheClock" },
        description: 'when it works, with "byTheClock"',
      }),
    station: id("the station whose staffing counts; any station when left out")
      .optional()
      .meta({
        label: "While staffed",
        onlyWith: { when: "whenStaffed" },
        leftOut: "any station",
        refersTo: ["stations"],
      }),
    share: share("part of that time it really works, such as 0.35 for a fridge")
      .default(1)
      .meta({ label: "Really on, share of that time" }),
  })
  .meta({
    title: "Use",
    isPlain: true,
    says: ["{windows}", "{when}[, on {share} of it]"],
    isWhole: true,
    change: "{item}: {now}, was {was}",
    description: "When a thing works; the rest of the time it takes its idle draw.",
  })
  .check(({ value, issues }) => {
    const refuse = (field: string, message: string, input: unknown) =>
      issues.push({ code: "custom", path: [field], input, message });
    if (value.when === "byTheClock" && value.windows === undefined) {
      refuse(
        "windows",
        'it works by the clock, so give its stretches, such as [{ "from": "07:00", "to": "22:00" }]',
        undefined,
      );
    }
    if (value.when !== "byTheClock" && value.windows !== undefined) {
      refuse(
        "windows",
        `stretches of the clock count only with "byTheClock", and when is "${value.when}"; take them out or change when`,
        value.windows,
      );
    }
    if (value.when !== "whenStaffed" && value.station !== undefined) {
      refuse(
        "station",
        `a station counts only with "whenStaffed", and when is "${value.when}"; take it out or change when`,
        value.station,
      );
    }
  });

/** A load of the site: router, lights, fridge, computer of everybody. */
export const Gear = z
  .strictObject({
    id: id("the thing's name in this document").meta({ label: "Short name" }),
    name: text("what people call it").meta({ label: "Name", isPlain: true }),
    count: count({ low: 0, high: 100, what: "how many of them" })
      .default(1)
      .meta({ label: "How many", isPlain: true, change: "{item}: {now}, was {was}" }),
    idle: Draw.default({ drawW: 0 }).meta({
      label: "Draw while idle",
      change: "{item}: idling at {now}, was {was}",
      description: "what one takes while it does not work",
    }),
    working: Draw.meta({
      label: "Draw while working",
      isPlain: true,
      change: "{item}: {now}, was {was}",
      description: "what one takes while it works",
    }),
    use: Use,
    lead: Lead.optional().meta({
      label: "Lead of its own",
      description: "its own branch; without one it depends on mainFeed.otherGear",
    }),
    ...PRESENCE,
  })
  .meta({
    title: "Gear",
    says: "[{count} × ]{working}, {use}",
    change: { added: "{thing} added, {now}", removed: "{thing} left at home" },
    description: "A load of the site: router, lights, fridge, everybody's computer.",
  });
export type Gear = z.infer<typeof Gear>;
