import * as z from "zod";
import { Bring } from "./bring.ts";
import { Cable } from "./cable.ts";
import { ClockTime, clockMinute } from "./clockTime.ts";
import { ClockWindows } from "./clockWindow.ts";
import { holderA } from "./lead.ts";
import { PRESENCE } from "./presence.ts";
import { count, id, kind, quantity, share, text, word } from "./quantity.ts";

/**
 * Kinds of cells, with the change of power and of open-circuit volts for each kelvin. Power: middles of the ranges of data sheets (solar.ezvirtualtools.com:
 * 0.34 to 0.38 % for today's mono, 0.40 to 0.45 poly, 0.26 to 0.30 heterojunction). Volts are at the low end of them (0.27 to 0.30, 0.33 to 0.36,
 * 0.23 to 0.26): for a string in the cold the code's larger table counts (coldOpenCircuitV).
 */
const CELL_KINDS = {
  mono: { powerTempCoeffPerK: -0.0035, vocTempCoeffPerK: -0.0027 },
  poly: { powerTempCoeffPerK: -0.0042, vocTempCoeffPerK: -0.0031 },
  heterojunction: { powerTempCoeffPerK: -0.0028, vocTempCoeffPerK: -0.0025 },
} as const;
/** Where nobody says what the cells are. */
const UNKNOWN_CELLS = { powerTempCoeffPerK: -0.0037, vocTempCoeffPerK: -0.0029 };

/**
 * A module's data sheet. Only the rated power is needed; the rest is filled in as for a common module of that size:
 * 36 cells up to 220 W and 60 above, 0.50 V a cell at the power point and 0.61 V open (common practice, no source),
 * and 190 W to the square metre, twice as long as wide.
 */
export const Module = z
  .strictObject({
    ratedW: quantity({ unit: "W", low: 1, high: 800, what: "rated power of one module", typical: [50, 400] }).meta({
      label: "One panel, rated",
      isPlain: true,
      change: { changed: "{item}: other panels of {now}, was {was}", tellsPart: true },
    }),
    vmpV: quantity({ unit: "V", low: 1, high: 120, what: "voltage at the power point" })
      .optional()
      .meta({ label: "Volts at the power point" }),
    impA: quantity({ unit: "A", low: 0.01, high: 40, what: "current at the power point" })
      .optional()
      .meta({ label: "Amperes at the power point" }),
    vocV: quantity({
      unit: "V",
      low: 1,
      high: 150,
      what: "open-circuit voltage; counts under a PWM controller, where volts are scarce, and for the limits",
    })
      .optional()
      .meta({ label: "Open-circuit volts" }),
    iscA: quantity({
      unit: "A",
      low: 0.01,
      high: 45,
      what: "short-circuit current; counts for the limits",
    })
      .optional()
      .meta({ label: "Short-circuit amperes" }),
    powerTempCoeffPerK: quantity({
      unit: "per K",
      low: -0.01,
      high: 0,
      what: "change of power with cell temperature; by cellKind when left out",
      typical: [-0.0047, -0.0026],
    })
      .optional()
      .meta({ label: "Power with warmth" }),
    vocTempCoeffPerK: quantity({
      unit: "per K",
      low: -0.01,
      high: 0,
      what: "change of open-circuit voltage with cell temperature, by cellKind when left out; counts under a PWM controller, where volts are scarce, and for the limits",
      typical: [-0.0035, -0.0024],
    })
      .optional()
      .meta({ label: "Open volts with warmth" }),
    cellKind: word(
      ["mono", "poly", "heterojunction"],
      "what the cells are, for how they take heat: mono (PERC and the like), poly (older), heterojunction",
    )
      .optional()
      .meta({
        label: "Kind of cells",
        choices: { mono: "mono", poly: "poly, older", heterojunction: "heterojunction" },
      }),
    ageYears: count({ low: 0, high: 40, what: "age of the modules in years; each takes 0.6 % of the power" })
      .default(0)
      .meta({ label: "Age, years" }),
    maxSeriesFuseA: quantity({
      unit: "A",
      low: 1,
      high: 60,
      what: "largest fuse that the module may stand behind, from its label; for the limits",
      typical: [10, 25],
    })
      .optional()
      .meta({ label: "Largest fuse in series" }),
    cells: count({ low: 1, high: 200, what: "cells in series" }).optional().meta({ label: "Cells in series" }),
    bypassSections: count({ low: 1, high: 12, what: "sections of cells, each with its own bypass diode" })
      .optional()
      .meta({ label: "Bypassed sections" }),
    lengthM: quantity({ unit: "m", low: 0.05, high: 3, what: "length of one module" })
      .optional()
      .meta({ label: "Length" }),
    widthM: quantity({ unit: "m", low: 0.05, high: 3, what: "width of one module" })
      .optional()
      .meta({ label: "Width" }),
    wiring: word(["series", "area"], "series: the darkest cells hold a section back; area: output follows the lit area")
      .default("series")
      .meta({ label: "Shade counts by", choices: { series: "darkest cells hold back", area: "lit area" } }),
  })
  .meta({
    title: "Module",
    change: { many: "{item}: other panels" },
    description: "A module's data sheet. Only the rated power is needed; the rest is filled in as for a common module.",
  })
  .check(({ value, issues }) => {
    const refuse = (field: string, message: string, input: unknown) =>
      issues.push({ code: "custom", path: [field], input, message });
    if (value.vmpV !== undefined && value.vocV !== undefined && value.vocV <= value.vmpV) {
      refuse(
        "vocV",
        `open-circuit voltage ${value.vocV} V must lie above the ${value.vmpV} V at the power point`,
        value.vocV,
      );
    }
    if (value.impA !== undefined && value.iscA !== undefined && value.iscA < value.impA) {
      refuse(
        "iscA",
        `short-circuit current ${value.iscA} A must not lie below the ${value.impA} A at the power point`,
        value.iscA,
      );
    }
    if (value.vmpV !== undefined && value.impA !== undefined) {
      const ratio = (value.vmpV * value.impA) / value.ratedW;
      if (ratio < 0.9 || ratio > 1.1) {
        const found = (value.vmpV * value.impA).toFixed(0);
        refuse(
          "ratedW",
          `vmpV × impA is ${found} W, more than a tenth away from the rated ${value.ratedW} W; check the data sheet`,
          value.ratedW,
        );
      }
    }
  })
  .transform((sheet) => {
    const cells = sheet.cells ?? (sheet.ratedW <= 220 ? 36 : 60);
    const vmpV = sheet.vmpV ?? (sheet.impA === undefined ? cells * 0.5 : sheet.ratedW / sheet.impA);
    const impA = sheet.impA ?? sheet.ratedW / vmpV;
    const areaM2 = sheet.ratedW / 190;
    const widthM = sheet.widthM ?? (sheet.lengthM === undefined ? Math.sqrt(areaM2 / 2) : areaM2 / sheet.lengthM);
    const byKind = sheet.cellKind === undefined ? UNKNOWN_CELLS : CELL_KINDS[sheet.cellKind];
    return {
      ...sheet,
      powerTempCoeffPerK: sheet.powerTempCoeffPerK ?? byKind.powerTempCoeffPerK,
      vocTempCoeffPerK: sheet.vocTempCoeffPerK ?? byKind.vocTempCoeffPerK,
      cells,
      vmpV,
      impA,
      vocV: sheet.vocV ?? vmpV * 1.22,
      iscA: sheet.iscA ?? impA * 1.06,
      bypassSections: sheet.bypassSections ?? (cells <= 40 ? 2 : 3),
      widthM,
      lengthM: sheet.lengthM ?? areaM2 / widthM,
    };
  });
export type Module = z.infer<typeof Module>;

const tiltDeg = quantity({ unit: "°", low: 0, high: 90, what: "tilt from level", typical: [0, 60] }).meta({
  label: "Tilt from level",
});
const azimuthDeg = quantity({
  unit: "°",
  low: 0,
  high: 360,
  what: "bearing the panel faces, clockwise from true north",
}).meta({ label: "Faces" });

const Aim = z
  .strictObject({
    at: ClockTime.meta({ label: "At", description: "local time at which it is turned there" }),
    tiltDeg: tiltDeg.optional().meta({ label: "Tilt" }),
    azimuthDeg: azimuthDeg.optional(),
  })
  .meta({
    title: "Aim",
    says: "{at}",
    description:
      "One turn of the panel. Without angles it is aimed at the middle of the sun's path until the next aim.",
  })
  .check(({ value, issues }) => {
    if ((value.tiltDeg === undefined) !== (value.azimuthDeg === undefined)) {
      const message =
        "give both tiltDeg and azimuthDeg, or neither to aim at the middle of the sun's path until the next aim";
      issues.push({ code: "custom", path: ["tiltDeg"], input: value.tiltDeg, message });
    }
  });

const Mount = z
  .discriminatedUnion(
    "kind",
    [
      z
        .strictObject({
          kind: kind("flat", "mount").meta({ label: "Stands", choices: { flat: "flat, as on a roof" } }),
          headingDeg: quantity({ unit: "°", low: 0, high: 360, what: "bearing of the modules' length" })
            .default(0)
            .meta({ label: "Length points to" }),
        })
        .meta({ title: "Mount: flat", says: "lying flat", description: "Lying level, as on a roof." }),
      z
        .strictObject({
          kind: kind("fixed", "mount").meta({ label: "Stands", choices: { fixed: "propped up, left alone" } }),
          tiltDeg,
          azimuthDeg,
        })
        .meta({
          title: "Mount: fixed",
          says: "propped at {tiltDeg} facing {azimuthDeg}",
          description: "Propped up and left alone.",
        }),
      z
        .strictObject({
          kind: kind("aimed", "mount").meta({ label: "Stands", choices: { aimed: "re-aimed by hand" } }),
          aims: z
            .array(Aim, { error: 'a list of aims, such as [{ "at": "10:00" }, { "at": "14:00" }]' })
            .min(1, { error: "a list with at least one aim" })
            .max(24, { error: "a list of at most 24 aims" })
            .meta({
              label: "Aimed",
              description: "turns of the day, in order; the last one stays until the first of the next day",
            }),
        })
        .meta({ title: "Mount: aimed", says: "re-aimed at {aims}", description: "Turned by hand at set times." })
        .check(({ value, issues }) => {
          const minutes = value.aims.map((aim) => clockMinute(aim.at));
          const late = minutes.findIndex((minute, i) => i > 0 && minute <= minutes[i - 1]!);
          if (late > 0) {
            const message = `${value.aims[late]!.at} does not come after ${value.aims[late - 1]!.at}; list the aims in the order of the day`;
            issues.push({ code: "custom", path: ["aims", late, "at"], input: value.aims[late]!.at, message });
          }
        }),
    ],
    { error: "a mount whose kind is flat, fixed or aimed" },
  )
  .meta({
    title: "Mount",
    isPlain: true,
    isWhole: true,
    change: "{item}: {now}",
    description: "How the modules stand.",
  });

/**
 * Losses between the light and the module's terminals, each a share with a name: they multiply. The default is the
 * national-laboratory list (NREL/TP-6A20-62641, 2014) without shading, availability and wiring, which are worked out here.
 */
export const DEFAULT_LOSSES = [
  { name: "soiling", share: 0.02 },
  { name: "mismatch", share: 0.02 },
  { name: "connections", share: 0.005 },
  { name: "light-induced degradation", share: 0.015 },
  { name: "nameplate", share: 0.01 },
];

const Controller = z
  .strictObject({
    kind: word(["mppt", "pwm"], "mppt follows the power point; pwm ties the panel to the bank's voltage")
      .default("mppt")
      .meta({ label: "Controller", isPlain: true, choices: { mppt: "MPPT", pwm: "PWM" } }),
    efficiencyShare: share("power that comes out of the controller", 0.5, 1).optional().meta({ label: "Efficiency" }),
    ownDrawW: quantity({
      unit: "W",
      low: 0,
      high: 20,
      what: "the controller's own draw, day and night",
      typical: [0.1, 0.5],
    })
      .optional()
      .meta({ label: "Own draw" }),
    maxChargeA: quantity({ unit: "A", low: 0.5, high: 300, what: "most current the controller gives the bank" })
      .nullable()
      .default(null)
      .meta({
        label: "Controller limit",
        description: "most current the controller gives the bank, from 0.5 to 300 A; null for no limit",
      }),
    maxPanelV: quantity({
      unit: "V",
      low: 10,
      high: 1000,
      what: "most open-circuit volts that its input stands; for the limits",
      typical: [50, 150],
    })
      .optional()
      .meta({ label: "Input stands, volts" }),
    maxPanelA: quantity({
      unit: "A",
      low: 0.5,
      high: 300,
      what: "most short-circuit current that its input stands; for the limits",
    })
      .optional()
      .meta({ label: "Input stands, amperes" }),
    fuseA: quantity({
      unit: "A",
      low: 0.5,
      high: 500,
      what: "fuse between the controller and the bank; for the limits",
    })
      .optional()
      .meta({ label: "Fuse to the bank" }),
    holderA,
    stepDownOnly: z
      .boolean({ error: "true or false (true for a controller that cannot raise the panel's voltage)" })
      .default(true)
      .meta({
        label: "Steps down only",
        description: "true for an MPPT controller that cannot raise the panel's voltage to the bank's",
      }),
    at: word(
      ["bank", "panels"],
      "where the controller sits: its long cable carries panel volts (bank) or bank volts (panels); one and the same under pwm",
    )
      .default("bank")
      .meta({ label: "Controller sits at", choices: { bank: "the bank", panels: "the panels" } }),
    cable: Cable.optional().meta({
      label: "Cable",
      leftOut: "10 AWG, 5 m one way",
      description:
        "the long run from panels to bank; 10 AWG over 5 m one way when left out, and then only assumed in the limits",
    }),
    shortCable: Cable.optional().meta({
      label: "Short run beside the controller",
      description:
        "the short run: from the controller to the bank where it sits at the bank, from the panels to it where it sits at the panels; for the limits, which assume one when left out",
    }),
  })
  .meta({ title: "Controller", description: "The charge controller of one panel group." })
  .transform((controller) => ({
    ...controller,
    efficiencyShare: controller.efficiencyShare ?? (controller.kind === "mppt" ? 0.95 : 0.99),
    ownDrawW: controller.ownDrawW ?? (controller.kind === "mppt" ? 0.3 : 0.1),
  }));

/** Like modules on one controller: a row along their width, centred on `at`. */
export const PanelGroup = z
  .strictObject({
    id: id("the group's name in this document").meta({ label: "Short name" }),
    name: text("what people call it").meta({ label: "Name", isPlain: true }),
    count: count({ low: 0, high: 60, what: "number of modules" }).meta({
      label: "Panels in the group",
      isPlain: true,
      change: "{item}: {now} {panel|panels}, was {was}",
    }),
    inSeries: count({ low: 1, high: 12, what: "modules in series in each string" })
      .default(1)
      .meta({ label: "In series" }),
    module: Module,
    mount: Mount,
    out: ClockWindows.min(1, {
      error: "a list with at least one stretch of the clock; leave it out for panels that always stand",
    })
      .optional()
      .meta({
        label: "Set out",
        isPlain: true,
        leftOut: "always",
        change: { changed: "{item}: out {now}", removed: "{item}: always out" },
        description: "when the panels are set out; always when left out",
      }),
    ...PRESENCE,
    at: z
      .strictObject({
        eastM: quantity({ unit: "m", low: -500, high: 500, what: "distance east of the site's origin" }).meta({
          label: "East of the middle",
          change: { ways: ["east", "west"] },
        }),
        northM: quantity({ unit: "m", low: -500, high: 500, what: "distance north of the site's origin" }).meta({
          label: "North of the middle",
          change: { ways: ["north", "south"] },
        }),
        heightM: quantity({
          unit: "m",
          low: 0.02,
          high: 50,
          what: "height of the modules' middle above the ground",
        }).meta({ label: "Height above ground" }),
      })
      .meta({ title: "Position", isPlain: true, description: "Where the middle of the group stands on the site." }),
    cooling: word(
      ["openRack", "closeRoof", "onRoof"],
      "how air reaches the back of the modules; by where they are when left out: closeRoof for what lies level or on a box's roof, onRoof for what lies on the ground, else openRack",
    )
      .optional()
      .meta({
        label: "Air behind the panel",
        isPlain: true,
        leftOut: "by where it is",
        choices: { openRack: "free all round", closeRoof: "a gap above the roof", onRoof: "stuck to the roof" },
      }),
    dirtShare: share("light that dirt, dust and pollen on the glass take; stands for the loss named soiling", 0, 0.95, {
      typical: [0.01, 0.05],
      why: "an event week without washing 0.01 to 0.05, thick dust or pollen 0.1 (common practice, no source)",
    })
      .optional()
      .meta({ label: "Taken by dirt" }),
    snowShare: share("light that snow on the glass takes over the whole event", 0, 0.95, {
      typical: [0, 0.3],
      why: "swept every morning 0 to 0.1, steep and left alone 0.05 to 0.3 in a snowy month, flat and left alone nearly all (after yearly losses of 0.05 at 45° and 0.3 on the flat, from memory)",
    })
      .default(0)
      .meta({ label: "Taken by snow" }),
    losses: z
      .array(
        z
          .strictObject({
            name: text("what takes it").meta({ label: "What takes it" }),
            share: share("power lost", 0, 0.95).meta({ label: "Share lost" }),
          })
          .meta({ title: "Loss", description: "A named loss between the light and the module's terminals." }),
        { error: "a list of named losses" },
      )
      .max(20, { error: "a list of at most 20 losses" })
      .default(DEFAULT_LOSSES)
      .meta({
        label: "Losses in the panel",
        description: "losses that multiply; shade, cable and controller are worked out and do not belong here",
      }),
    controller: Controller.prefault({}),
    stringFuseA: quantity({
      unit: "A",
      low: 1,
      high: 60,
      what: "fuse of each string, where strings stand side by side; for the limits",
      typical: [10, 20],
    })
      .optional()
      .meta({ label: "Fuse of each string" }),
    bring: Bring.optional(),
  })
  .meta({
    title: "Panel group",
    says: "{count} × {module.ratedW}, {mount.kind}",
    change: { removed: "{thing} left at home" },
    description: "Like modules on one controller: a row along their width, centred on the group's position.",
  })
  .check(({ value, issues }) => {
    if (value.count % value.inSeries !== 0) {
      const message = `${value.count} modules do not divide into strings of ${value.inSeries}; change count or inSeries`;
      issues.push({ code: "custom", path: ["inSeries"], input: value.inSeries, message });
    }
  });
export type PanelGroup = z.infer<typeof PanelGroup>;
