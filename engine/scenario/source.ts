import * as z from "zod";
import { Bring } from "./bring.ts";
import { ClockWindows } from "./clockWindow.ts";
import { Lead } from "./lead.ts";
import { PRESENCE } from "./presence.ts";
import { id, kind, quantity, share, text } from "./quantity.ts";

const named = {
  id: id("the source's name in this document").meta({ label: "Short name" }),
  name: text("what people call it").meta({ label: "Name", isPlain: true }),
  lead: Lead.optional().meta({
    label: "Lead to the bank",
    description: "from its charger to the bank; for the limits",
  }),
  bring: Bring.optional(),
  ...PRESENCE,
};
const chargeV = quantity({
  unit: "V",
  low: 10,
  high: 70,
  what: "voltage this charger holds; the bank's own absorption voltage when left out",
})
  .optional()
  .meta({ label: "Charger holds" });
const windows = ClockWindows.min(1, { error: "a list with at least one stretch of the clock" });

const Mains = z
  .strictObject({
    kind: kind("mains", "source"),
    ...named,
    chargerA: quantity({
      unit: "A",
      low: 0.5,
      high: 400,
      what: "most current the charger gives the bank",
      typical: [10, 40],
      why: "about a fifth of the bank's ampere-hours",
    }).meta({
      label: "Charger gives",
      isPlain: true,
    }),
    chargeV,
    available: windows.meta({ label: "Mains is there", isPlain: true, description: "when mains is there" }),
  })
  .meta({ title: "Source: mains", says: "{kind}, {chargerA}, {available}", description: "A charger on mains." });

const Generator = z
  .strictObject({
    kind: kind("generator", "source"),
    ...named,
    continuousW: quantity({
      unit: "W",
      low: 100,
      high: 20_000,
      what: "power it can give for hours, not its peak",
      typical: [800, 1800],
    }).meta({ label: "Continuous power", isPlain: true }),
    chargerA: quantity({
      unit: "A",
      low: 0.5,
      high: 400,
      what: "most current its charger gives the bank",
      typical: [10, 40],
      why: "about a fifth of the bank's ampere-hours",
    }).meta({
      label: "Charger gives",
      isPlain: true,
    }),
    chargerEfficiencyShare: share("power that comes out of its charger", 0.3, 1)
      .default(0.88)
      .meta({ label: "Charger efficiency" }),
    chargeV,
    allowed: windows.meta({
      label: "May run",
      isPlain: true,
      description: "when it may run: quiet hours, somebody awake",
    }),
    startShare: share("charge at or below which it is started").meta({ label: "Starts at or below", isPlain: true }),
    stopShare: share("charge at which it is stopped").meta({ label: "Stops at", isPlain: true }),
    burnIdleLPerH: quantity({
      unit: "L/h",
      low: 0,
      high: 10,
      what: "fuel burnt without load",
      typical: [0.2, 0.4],
    }).meta({ label: "Fuel, idling", isPlain: true }),
    burnFullLPerH: quantity({
      unit: "L/h",
      low: 0.05,
      high: 30,
      what: "fuel burnt at continuous power",
      typical: [0.9, 1.1],
    }).meta({ label: "Fuel, full power", isPlain: true }),
    fuelL: quantity({
      unit: "L",
      low: 0,
      high: 2000,
      what: "fuel brought along",
      typical: [2, 10],
      why: "what stands in the boot",
    }).meta({
      label: "Fuel brought",
      isPlain: true,
    }),
  })
  .meta({
    title: "Source: generator",
    says: "{kind}, {chargerA}, {allowed}",
    description: "A generator with a charger, started and stopped by the bank's charge within the hours allowed.",
  })
  .check(({ value, issues }) => {
    if (value.stopShare <= value.startShare) {
      const message = `it would stop at ${value.stopShare}, not above the ${value.startShare} at which it starts; raise stopShare`;
      issues.push({ code: "custom", path: ["stopShare"], input: value.stopShare, message });
    }
    if (value.burnFullLPerH < value.burnIdleLPerH) {
      const message = `it would burn less at full power (${value.burnFullLPerH} L/h) than idling (${value.burnIdleLPerH} L/h); swap the two`;
      issues.push({ code: "custom", path: ["burnFullLPerH"], input: value.burnFullLPerH, message });
    }
  });

const Vehicle = z
  .strictObject({
    kind: kind("vehicle", "source"),
    ...named,
    outputA: quantity({
      unit: "A",
      low: 1,
      high: 100,
      what: "most current the DC-DC charger gives the bank",
      typical: [20, 60],
    }).meta({ label: "DC-DC charger gives", isPlain: true }),
    chargeV,
    running: windows.meta({ label: "Engine runs", isPlain: true, description: "when its engine runs" }),
  })
  .meta({
    title: "Source: vehicle",
    says: "{kind}, {outputA}, {running}",
    description: "A DC-DC charger on a vehicle's alternator.",
  });

/** Something other than the sun that charges the bank. */
export const Source = z
  .discriminatedUnion("kind", [Mains, Generator, Vehicle], {
    error: "a source whose kind is mains, generator or vehicle",
  })
  .meta({
    title: "Source",
    change: { added: "{thing} added, {now}", removed: "{thing} left at home" },
    description: "Something other than the sun that charges the bank.",
  });
export type Source = z.infer<typeof Source>;
export type Generator = z.infer<typeof Generator>;
