import * as z from "zod";
import { Bring } from "./bring.ts";
import { Lead } from "./lead.ts";
import { count, quantity, share, text, word } from "./quantity.ts";

/** The chemistries that are modelled. */
export const CHEMISTRIES = ["lfp", "agm", "flooded"] as const;
export type Chemistry = (typeof CHEMISTRIES)[number];

/** Voltages a block of each chemistry is sold in. */
const BLOCK_VOLTS: Record<Chemistry, readonly number[]> = { lfp: [12, 24, 48], agm: [2, 6, 12], flooded: [2, 6, 12] };

/** A box about the bank: what it keeps of warmth, and a heating pad in it. */
const Box = z
  .strictObject(
    {
      lossWPerK: quantity({
        unit: "W/K",
        low: 0.01,
        high: 100,
        what: "heat that leaves the box for each degree that the bank is warmer than the air",
        typical: [0.3, 2.5],
        why: "100 Ah under 5 cm of foam 0.3 to 0.6, in a bare plastic box 2 to 3; area ÷ thickness × 0.035 W/(m K), no source",
      }).meta({ label: "Heat that the box loses" }),
      heatCapacityWhPerK: quantity({
        unit: "Wh/K",
        low: 0.01,
        high: 10_000,
        what: "heat that warms the bank by one degree; by chemistry and capacity when left out",
      })
        .optional()
        .meta({ label: "Heat that the bank holds" }),
      startC: quantity({
        unit: "°C",
        low: -40,
        high: 60,
        what: "temperature of the bank when the plan begins; that of the air when left out",
      })
        .optional()
        .meta({ label: "Warm at the start" }),
      heater: z
        .strictObject({
          drawW: quantity({
            unit: "W",
            low: 0.5,
            high: 2000,
            what: "what the pad takes while it heats",
            typical: [10, 60],
          }).meta({ label: "Draw" }),
          setC: quantity({
            unit: "°C",
            low: -30,
            high: 35,
            what: "temperature that its thermostat holds",
            typical: [5, 15],
          })
            .default(5)
            .meta({ label: "Thermostat holds" }),
        })
        .meta({ title: "Heating pad", description: "A pad with a thermostat in the battery box; it is a load." })
        .optional()
        .meta({ label: "Heating pad" }),
    },
    { error: 'a box, such as { "lossWPerK": 0.5, "heater": { "drawW": 20 } }' },
  )
  .meta({
    title: "Battery box",
    description: "What keeps the bank warmer than the air: insulation, and a heating pad.",
  });
export type BankBox = z.infer<typeof Box>;

/** The bank as the data sheet and the label tell it; what is left out is filled in by chemistry in `bankData`. */
export const Bank = z
  .strictObject({
    chemistry: word(CHEMISTRIES, "lfp: lithium iron phosphate; agm; flooded lead-acid").meta({
      label: "Chemistry",
      isPlain: true,
      choices: { lfp: "LFP", agm: "AGM", flooded: "flooded lead" },
    }),
    nominalV: z
      .union([z.literal(12), z.literal(24), z.literal(48)], { error: "12, 24 or 48 (nominal volts of the bank)" })
      .default(12)
      .meta({ label: "Bank voltage", description: "nominal volts of the bank: 12, 24 or 48" }),
    blockAh: quantity({
      unit: "Ah",
      low: 1,
      high: 3000,
      what: "rated capacity of one block at the 20 h rate",
      typical: [50, 300],
    }).meta({ label: "One block", isPlain: true }),
    inSeries: count({
      low: 1,
      high: 24,
      what: "blocks in series in each string; must fit nominalV and the blocks that are sold, and counts for nothing else",
    })
      .default(1)
      .meta({ label: "Blocks in series" }),
    inParallel: count({ low: 1, high: 16, what: "strings in parallel" })
      .default(1)
      .meta({ label: "Blocks side by side", isPlain: true }),
    stringLead: Lead.optional().meta({
      label: "Lead of each string",
      description: "from each of the strings that stand side by side to where they join, with its fuse; for the limits",
    }),
    healthShare: share("capacity that age has left", 0.2, 1, { typical: [0.8, 1], why: "sold as worn out at 80 %" })
      .default(1)
      .meta({ label: "Left by age" }),
    startShare: share("charge at the start", 0, 1, {
      typical: [0.9, 1],
      why: "charged at home, then standing a few days",
    }).meta({
      label: "Charge at the start",
      isPlain: true,
      change: "bank at {now} to begin with, was {was}",
    }),
    reserveShare: share("charge that the plan keeps back", 0, 0.95, {
      typical: [0.2, 0.5],
      why: "LFP keeps 20 %, lead half for a long life",
    }).meta({
      label: "Reserve kept back",
      isPlain: true,
      change: "reserve {now}, was {was}",
    }),
    maxChargeA: quantity({ unit: "A", low: 0.1, high: 5000, what: "most current the whole bank may take" })
      .optional()
      .meta({ label: "Charge limit", change: { followsSize: true } }),
    maxDischargeA: quantity({
      unit: "A",
      low: 0.1,
      high: 5000,
      what: "most current the whole bank may give",
    })
      .optional()
      .meta({ label: "Discharge limit", change: { followsSize: true } }),
    peakDischargeA: quantity({
      unit: "A",
      low: 0.1,
      high: 10_000,
      what: "most current the whole bank may give for a few seconds; for the limits",
    })
      .optional()
      .meta({ label: "Discharge limit for seconds" }),
    shortCircuitA: quantity({
      unit: "A",
      low: 10,
      high: 300_000,
      what: "prospective short-circuit current of the whole bank, as its maker states it; for the limits",
    })
      .optional()
      .meta({ label: "Short-circuit current" }),
    internalResistanceOhm: quantity({
      unit: "Ω",
      low: 0,
      high: 2,
      what: "resistance of the whole bank with its electronics, as a load meets it at half charge and 25 °C; it rises in the cold",
    })
      .optional()
      .meta({ label: "Resistance, under load", change: { followsSize: true } }),
    chargingResistanceOhm: quantity({
      unit: "Ω",
      low: 0,
      high: 5,
      what: "apparent resistance of the whole bank to a steady charging current at half charge and 25 °C; it rises in the cold and, in lead, towards full",
    })
      .optional()
      .meta({ label: "Resistance, charging", change: { followsSize: true } }),
    coulombicEfficiencyShare: share("charge that comes back of what went in", 0.5, 1)
      .optional()
      .meta({ label: "Charge that comes back" }),
    peukertExponent: quantity({
      unit: "",
      low: 1,
      high: 1.6,
      what: "Peukert exponent, used for lead only",
      typical: [1.05, 1.3],
    })
      .optional()
      .meta({ label: "Peukert exponent" }),
    absorptionV: quantity({
      unit: "V",
      low: 8,
      high: 70,
      what: "voltage at which charging is held while the current tapers",
    })
      .optional()
      .meta({ label: "Absorption voltage" }),
    acceptancePerH: quantity({
      unit: "A per missing Ah",
      low: 0.05,
      high: 1000,
      what: "most charging current for each ampere-hour that is missing; it shapes the taper",
    })
      .optional()
      .meta({ label: "Taper" }),
    disconnectV: quantity({
      unit: "V",
      low: 0,
      high: 60,
      what: "voltage under load at which loads are cut off; 0 for none",
    })
      .optional()
      .meta({ label: "Cuts off at" }),
    reconnectV: quantity({ unit: "V", low: 0, high: 65, what: "voltage at which loads come back" })
      .optional()
      .meta({ label: "Comes back at" }),
    coldChargeLockC: quantity({
      unit: "°C",
      low: -40,
      high: 20,
      what: "temperature at and below which charging is blocked",
    })
      .nullable()
      .optional()
      .meta({
        label: "No charging at or below",
        description: "temperature at and below which charging is blocked, from -40 to 20 °C; null for no lock",
      }),
    coldDischargeLockC: quantity({
      unit: "°C",
      low: -60,
      high: 20,
      what: "temperature at and below which the bank gives nothing",
    })
      .nullable()
      .optional()
      .meta({
        label: "Gives nothing at or below",
        description: "temperature at and below which the bank gives nothing, from -60 to 20 °C; null for no lock",
      }),
    temperature: z
      .union([z.literal("air"), quantity({ unit: "°C", low: -40, high: 60, what: "temperature of the bank" })], {
        error: '"air" (the bank is as warm as the air) or a number from -40 to 60 °C (temperature of the bank)',
      })
      .default("air")
      .meta({
        label: "Bank temperature",
        isPlain: true,
        choices: { air: "as the air" },
        description: '"air" (as warm as the air) or the temperature of the bank, from -40 to 60 °C',
      }),
    box: Box.optional().meta({ label: "Battery box" }),
    openCircuitCurve: z
      .array(
        z
          .strictObject({
            share: share("charge").meta({ label: "Charge" }),
            cellV: quantity({ unit: "V", low: 0.5, high: 5, what: "open-circuit voltage of one cell" }).meta({
              label: "Cell at rest",
            }),
          })
          .meta({ title: "Curve point", description: "One point of the open-circuit curve." }),
        { error: "a list of charges with cell voltages" },
      )
      .min(2, { error: "a list of at least two points" })
      .max(60, { error: "a list of at most 60 points" })
      .optional()
      .meta({
        label: "Own open-circuit curve",
        leftOut: "the chemistry's",
        description: "your own open-circuit curve, from share 0 to share 1; the chemistry's when left out",
      }),
    name: text("what people call it")
      .optional()
      .meta({ label: "Name", change: { followsSize: true } }),
    bring: Bring.optional().meta({ change: { followsSize: true } }),
  })
  .meta({ title: "Bank", description: "All batteries that work as one, as the data sheet and the label tell it." })
  .check(({ value, issues }) => {
    const refuse = (field: string, message: string, input: unknown) =>
      issues.push({ code: "custom", path: [field], input, message });
    const blockV = value.nominalV / value.inSeries;
    if (!BLOCK_VOLTS[value.chemistry].includes(blockV)) {
      const usual = BLOCK_VOLTS[value.chemistry].join(", ");
      refuse(
        "inSeries",
        `${value.inSeries} in series for ${value.nominalV} V makes blocks of ${+blockV.toFixed(2)} V, but ${value.chemistry} blocks come in ${usual} V; change inSeries or nominalV`,
        value.inSeries,
      );
    }
    if (
      value.peakDischargeA !== undefined &&
      value.maxDischargeA !== undefined &&
      value.peakDischargeA < value.maxDischargeA
    ) {
      refuse(
        "peakDischargeA",
        `for seconds it would give ${value.peakDischargeA} A, less than the ${value.maxDischargeA} A it may give all the time; swap the two or leave one out`,
        value.peakDischargeA,
      );
    }
    if (value.disconnectV !== undefined && value.reconnectV !== undefined && value.reconnectV < value.disconnectV) {
      refuse(
        "reconnectV",
        `loads would come back at ${value.reconnectV} V, below the ${value.disconnectV} V at which they are cut; raise reconnectV`,
        value.reconnectV,
      );
    }
    if (value.box !== undefined && value.temperature !== "air") {
      refuse(
        "box",
        `in a box the bank's temperature follows from the air, but temperature is ${value.temperature} °C; leave one of the two out (box.startC says how warm it begins)`,
        value.box,
      );
    }
    const curve = value.openCircuitCurve;
    if (curve !== undefined) {
      const rising = curve.every(
        (point, i) => i === 0 || (point.share > curve[i - 1]!.share && point.cellV >= curve[i - 1]!.cellV),
      );
      if (!rising || curve[0]?.share !== 0 || curve.at(-1)?.share !== 1) {
        refuse(
          "openCircuitCurve",
          "its points must run from share 0 to share 1, in order, and the voltage may not fall on the way",
          curve,
        );
      }
    }
  });
export type Bank = z.infer<typeof Bank>;
