import * as z from "zod";
import { Bring } from "./bring.ts";
import { ClockWindows } from "./clockWindow.ts";
import { id, kind, quantity, share, text } from "./quantity.ts";

const named = {
  id: id("the source's name in this document"),
  name: text("what people call it"),
  bring: Bring.optional(),
};
const chargeV = quantity({
  unit: "V",
  low: 10,
  high: 70,
  what: "voltage this charger holds; the bank's own absorption voltage when left out",
}).optional();
const windows = ClockWindows.min(1, { error: "a list with at least one stretch of the clock" });

const Mains = z
  .strictObject({
    kind: kind("mains", "source"),
    ...named,
    chargerA: quantity({ unit: "A", low: 0.5, high: 400, what: "most current the charger gives the bank" }),
    chargeV,
    available: windows.meta({ description: "when mains is there" }),
  })
  .meta({ title: "Source: mains", description: "A charger on mains." });

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
    }),
    chargerA: quantity({ unit: "A", low: 0.5, high: 400, what: "most current its charger gives the bank" }),
    chargerEfficiencyShare: share("power that comes out of its charger", 0.3, 1).default(0.88),
    chargeV,
    allowed: windows.meta({ description: "when it may run: quiet hours, somebody awake" }),
    startShare: share("charge at or below which it is started"),
    stopShare: share("charge at which it is stopped"),
    burnIdleLPerH: quantity({ unit: "L/h", low: 0, high: 10, what: "fuel burnt without load", typical: [0.2, 0.4] }),
    burnFullLPerH: quantity({
      unit: "L/h",
      low: 0.05,
      high: 30,
      what: "fuel burnt at continuous power",
      typical: [0.9, 1.1],
    }),
    fuelL: quantity({ unit: "L", low: 0, high: 2000, what: "fuel brought along" }),
  })
  .meta({
    title: "Source: generator",
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
    }),
    chargeV,
    running: windows.meta({ description: "when its engine runs" }),
  })
  .meta({ title: "Source: vehicle", description: "A DC-DC charger on a vehicle's alternator." });

/** Something other than the sun that charges the bank. */
export const Source = z
  .discriminatedUnion("kind", [Mains, Generator, Vehicle], {
    error: "a source whose kind is mains, generator or vehicle",
  })
  .meta({ title: "Source", description: "Something other than the sun that charges the bank." });
export type Source = z.infer<typeof Source>;
export type Generator = z.infer<typeof Generator>;
