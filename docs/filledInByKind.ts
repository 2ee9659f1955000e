import { CHEMISTRY_DATA } from "../engine/bank/chemistryData.ts";
import { prepareBank } from "../engine/bank/prepareBank.ts";
import { RF_DUTY_SHARE, transmitDraw } from "../engine/load/modeCurrent.ts";
import { SURENESS_SPREAD } from "../engine/run/memberFigures.ts";
import { Bank, CHEMISTRIES } from "../engine/scenario/bank.ts";
import { SURENESS_WORDS, Sureness } from "../engine/scenario/chanceFields.ts";
import { DEFAULT_LOSSES, Module, PanelGroup } from "../engine/scenario/panelGroup.ts";
import { MODES } from "../engine/scenario/station.ts";
import { surenessOfLead } from "../engine/sky/knownDays.ts";
import { SKY_WORDS } from "../engine/sky/skyWords.ts";
import { mdTable } from "./mdTable.ts";

const figure = (value: number) => String(Number(value.toPrecision(4)));

/** The chapter of defaults that depend on something else in the document, each read from the engine itself. */
export function filledInByKind(): string {
  return [
    "## What is filled in by kind",
    "Some defaults depend on something else you wrote. These are what the engine uses when you leave the field out; what you measured is better.",
    ...module(),
    ...controller(),
    ...bank(),
    ...modes(),
    ...sky(),
    ...sureness(),
  ].join("\n\n");
}

function module(): string[] {
  const sizes = [50, 100, 200, 400].map((ratedW) => Module.parse({ ratedW }));
  const row = (field: string, how: string, value: (module: Module) => number) => [
    `\`${field}\``,
    ...sizes.map((size) => figure(value(size))),
    how,
  ];
  return [
    "### Module",
    "As for a common module of that size (common practice, no source).",
    mdTable(
      ["left out", ...sizes.map((size) => `${size.ratedW} W`), "rule"],
      [
        row("cells", "36 up to 220 W, 60 above", (size) => size.cells),
        row("bypassSections", "2 up to 40 cells, 3 above", (size) => size.bypassSections),
        row("vmpV", "0.50 V a cell", (size) => size.vmpV),
        row("impA", "rated power ÷ vmpV", (size) => size.impA),
        row("vocV", "1.22 × vmpV", (size) => size.vocV),
        row("iscA", "1.06 × impA", (size) => size.iscA),
        row("lengthM", "190 W to the square metre, twice as long as wide", (size) => size.lengthM),
        row("widthM", "", (size) => size.widthM),
      ],
    ),
    `Losses, when left out: ${DEFAULT_LOSSES.map(({ name, share }) => `${name} ${figure(100 * share)} %`).join(", ")}; they multiply to ${figure(100 * (1 - DEFAULT_LOSSES.reduce((kept, { share }) => kept * (1 - share), 1)))} % (NREL/TP-6A20-62641, 2014, without shading, availability and wiring, which are worked out).`,
  ];
}

function controller(): string[] {
  const filled = (["mppt", "pwm"] as const).map((kind) => {
    const group = PanelGroup.parse({
      id: "one",
      name: "one",
      count: 1,
      module: { ratedW: 100 },
      mount: { kind: "flat" },
      at: { eastM: 0, northM: 0, heightM: 1 },
      controller: { kind },
    });
    return group.controller;
  });
  return [
    "### Controller",
    mdTable(
      ["`kind`", "`efficiencyShare`", "`ownDrawW`"],
      filled.map((each) => [`\`${each.kind}\``, figure(each.efficiencyShare), figure(each.ownDrawW)]),
    ),
    "Common practice, no source: MPPT 92 to 98 % with 10 to 35 mA of its own, PWM 5 to 15 mA.",
  ];
}

function bank(): string[] {
  const banks = CHEMISTRIES.map((chemistry) => {
    const written = Bank.parse({ chemistry, blockAh: 100, startShare: 1, reserveShare: 0.2 });
    return prepareBank(written, new Float64Array([20]), 1 / 6);
  });
  const data = CHEMISTRIES.map((chemistry) => CHEMISTRY_DATA[chemistry]);
  const row = (field: string, values: readonly (number | null)[], unit: string) => [
    `\`${field}\``,
    ...values.map((value) => (value === null ? "none" : figure(value))),
    unit,
  ];
  const curve = (points: readonly (readonly [number, number])[], say: (x: number, y: number) => string) =>
    points.map(([x, y]) => say(x, y)).join(", ");
  return [
    "### Bank",
    "For one block of 12 V and 100 Ah. Currents and resistances follow the rated capacity (twice the ampere-hours: twice the current, half the resistance); voltages follow the nominal voltage. Where they come from stands in [model.md](model.md).",
    mdTable(
      ["left out", ...CHEMISTRIES.map((chemistry) => `\`${chemistry}\``), "unit"],
      [
        row(
          "maxChargeA",
          banks.map((each) => each.maxChargeA[0]!),
          "A",
        ),
        row(
          "maxDischargeA",
          banks.map((each) => each.maxDischargeA),
          "A",
        ),
        row(
          "internalResistanceOhm",
          banks.map((each) => each.internalOhm),
          "Ω",
        ),
        row(
          "chargingResistanceOhm",
          banks.map((each) => each.chargingOhm),
          "Ω",
        ),
        row(
          "coulombicEfficiencyShare",
          banks.map((each) => each.coulombicShare),
          "",
        ),
        row(
          "peukertExponent",
          data.map((each) => each.peukertExponent),
          "",
        ),
        row(
          "absorptionV",
          banks.map((each) => each.absorptionV),
          "V",
        ),
        row(
          "acceptancePerH",
          data.map((each) => each.acceptancePerH),
          "A per missing Ah",
        ),
        row(
          "disconnectV",
          banks.map((each) => each.disconnectV),
          "V",
        ),
        row(
          "reconnectV",
          banks.map((each) => each.reconnectV),
          "V",
        ),
        row(
          "coldChargeLockC",
          data.map((each) => each.coldChargeLockC),
          "°C",
        ),
        row(
          "coldDischargeLockC",
          data.map((each) => each.coldDischargeLockC),
          "°C",
        ),
      ],
    ),
    "Capacity within reach at a temperature, and the open-circuit curve of one cell:",
    mdTable(
      ["", "capacity that can be drawn", "open-circuit volts of a cell, by charge"],
      CHEMISTRIES.map((chemistry, k) => [
        `\`${chemistry}\``,
        curve(data[k]!.capacityAgainstC, (tempC, share) => `${figure(100 * share)} % at ${tempC} °C`),
        curve(data[k]!.openCircuit, (share, volts) => `${figure(100 * share)} % ${volts.toFixed(3)}`),
      ]),
    ),
    `LFP takes less charging current when cold or hot: up to ${curve(CHEMISTRY_DATA.lfp.chargePerAhAgainstC, (tempC, perAh) => `${figure(perAh)} A per Ah above ${tempC} °C`)} (and never more than \`maxChargeA\`).`,
  ];
}

function modes(): string[] {
  const radio = { ratedW: 100, receiveW: 1.2 * 13.8, fullPowerW: 20 * 13.8, biasW: 3 * 13.8 };
  const amperes = (mode: (typeof MODES)[number], transmitW: number) =>
    figure(transmitDraw(radio, transmitW, "envelope").sendingW(mode) / 13.8);
  return [
    "### Modes",
    "What each mode means for a 100 W radio of 1.2 A on receive, 20 A at full power and 3 A bias: current while sending, averaged over the transmission.",
    mdTable(
      ["`mode`", "RF duty", "A at 100 W", "A at 50 W", "A at 20 W", "A at 5 W"],
      MODES.map((mode) => [
        `\`${mode}\``,
        figure(RF_DUTY_SHARE[mode]),
        ...[100, 50, 20, 5].map((transmitW) => amperes(mode, transmitW)),
      ]),
    ),
  ];
}

function sky(): string[] {
  return [
    "### Words for a day's sky",
    mdTable(
      ["word", "meaning", "eighths under cloud", "light on the level, share of a cloudless day"],
      SKY_WORDS.map(({ word, meaning, okta, clearIndexShare }) => [
        `\`${word}\``,
        meaning,
        String(okta),
        clearIndexShare.toFixed(2),
      ]),
    ),
  ];
}

function sureness(): string[] {
  const defaults = Sureness.parse({});
  const of: Record<keyof Sureness, string> = {
    idleDraw: "of the draw",
    startCharge: "points of full",
    bankHealth: "of the capacity",
    canopy: "of the transmittance",
    panelYield: "of the yield",
  };
  return [
    "### What each word of sureness means",
    "An ensemble varies each figure about the one you wrote: standard deviation of a normal spread, cut at three of them (common practice, no source). Bold: when left out.",
    mdTable(
      ["`sureness`", ...SURENESS_WORDS.map((word) => `\`${word}\``), ""],
      (Object.keys(of) as (keyof Sureness)[]).map((field) => [
        `\`${field}\``,
        ...SURENESS_WORDS.map((word) => {
          const percent = `${figure(100 * SURENESS_SPREAD[field][word])} %`;
          return word === defaults[field] ? `**${percent}**` : percent;
        }),
        of[field],
      ]),
    ),
    `A known day whose \`sureness\` is left out, and a day told in words, is as sure as a forecast made at the start: ${[0, 1, 3, 7].map((days) => `${figure(surenessOfLead(days))} for ${days === 0 ? "the first day" : `${days} day${days === 1 ? "" : "s"} on`}`).join(", ")} (tomorrow's from Perez et al., Solar Energy 94 (2013) 305–326; the loss per day common practice, no source).`,
  ];
}
