import { describe, expect, test } from "vitest";
import { duskline } from "./duskline.ts";

/** What `explain` prints, and nothing else: the figures of each part by name, and the sentence beside each. */
function printed(scenario: string, at: string, ...options: string[]) {
  const { out } = duskline("explain", `scenarios/${scenario}.json`, "--at", at, ...options);
  const parts = out
    .trimEnd()
    .split("\n\n")
    .map((text) => {
      const [title, heads, , ...lines] = text.split("\n");
      const valueEnd = heads!.indexOf("value") + "value".length;
      const numbers = lines.map((line) => {
        const [, name, value] = /^ {2}(.+?) {2,}(-?[\d.]+)$/.exec(line.slice(0, valueEnd)) ?? [];
        if (name === undefined) throw new Error(`no number in "${line}"`);
        return { name, value: Number(value), how: line.slice(valueEnd) };
      });
      const find = (name: string) => numbers.find((number) => number.name === name);
      return {
        title: title!,
        has: (name: string) => find(name) !== undefined,
        value: (name: string) => find(name)?.value ?? Number.NaN,
        /** Figures in the sentence beside a number, in their order. */
        figures: (name: string) => [...find(name)!.how.matchAll(/\d+(?:\.\d+)?/g)].map(([figure]) => Number(figure)),
        numbers,
      };
    });
  const part = (start: string) => parts.find((each) => each.title.startsWith(start))!;
  return { part, sky: part("Sky"), loads: part("Loads"), bank: part("Bank") };
}

/** Printed figures have five digits; a few of them multiplied and subtracted are good to this share, or to this much near nothing. */
const SHARE = 3e-4;
const NEAR_NOTHING = 2e-3;

function close(found: number, byHand: number, what: string): void {
  expect(Math.abs(found - byHand), `${what}: printed ${found}, by hand ${byHand}`).toBeLessThanOrEqual(
    Math.max(NEAR_NOTHING, SHARE * Math.abs(byHand)),
  );
}

/** What stands between the sun and the loads: one line for each source. */
function sourcesW(bank: ReturnType<typeof printed>["bank"]): number {
  const at = (name: string) => bank.numbers.findIndex((number) => number.name === name);
  return bank.numbers.slice(at("solar spilled") + 1, at("served")).reduce((sum, number) => sum + number.value, 0);
}

const STEPS: [scenario: string, at: string, group: string, options?: string[]][] = [
  ["walnut-grove", "2026-10-09T12:00", "Panels: Van roof"], // flat, deep in the shade of a crown, tracking
  ["walnut-grove", "2026-10-10T15:40", "Panels: Van roof"],
  ["walnut-grove", "2026-10-09T10:00", "Panels: Folding panels in the meadow", ["--variant", "meadow"]],
  ["peat-moor", "2026-08-29T14:00", "Panels: Folding panel by the wall"], // PWM, in the power point's plateau
  ["peat-moor", "2026-08-29T08:10", "Panels: Folding panel by the wall"], // behind the wall
  ["peat-moor", "2026-08-29T18:30", "Panels: Folding panel by the wall"], // discharging a lead bank: Peukert
  ["polar-hut", "2027-01-23T12:30", "Panels: Panels on the south wall"], // beside the generator
  ["polar-hut", "2027-01-28T11:30", "Panels: Panels on the south wall"], // steep, snow in front, cold
];

describe.each(STEPS)("%s at %s, %s", (scenario, at, group, options = []) => {
  const { part, sky, loads, bank } = printed(scenario, at, ...options);
  const panels = part(group);
  const p = panels.value;

  test("light on the panel follows from the sky's", () => {
    close(p("part of the sky light from beside the sun"), sky.value("beam") / sky.value("above the air"), "beside");
    const [sine] = sky.figures("sky light, level");
    close(sky.value("sky light, level"), sky.value("this sky, level") - sky.value("beam") * sine!, "sky light");
    const beside = p("part of the sky light from beside the sun");
    close(p("what that part becomes on it"), p("cosine of the sun's angle on it") / sine!, "ratio");
    const beam =
      sky.value("beam") * p("cosine of the sun's angle on it") +
      sky.value("sky light, level") * beside * p("what that part becomes on it");
    close(p("beam on it, no shade"), beam, "beam");
    const even = sky.value("sky light, level") * p("share of even sky light that falls on it") * (1 - beside);
    close(p("sky light on it"), even, "sky");
    const ground = sky.value("this sky, level") * panels.figures("ground light on it")[0]!;
    close(p("ground light on it"), ground, "ground");
    const rest = p("sky light on it") + p("ground light on it");
    const past = p("beam on it, no shade") * p("share of the beam that gets past");
    close(p("on the plane, after shade"), past + rest, "plane");
    close(p("behind the glass"), past * p("share of the beam through the glass") + rest, "glass");
    close(p("cells"), sky.value("air") + p("on the plane, after shade") * panels.figures("cells")[0]!, "cells");
  });

  test("power follows from the light of the darkest conducting section", () => {
    const light =
      p("beam on it, no shade") *
        p("share of the beam through the glass") *
        p("share of the beam on the darkest of them") +
      p("sky light on it") +
      p("ground light on it");
    close(p("light of that section"), light, "section");
    const [vmpV, , coeff] = panels.figures("power point of a string");
    close(p("power point of a string"), vmpV! * (1 - coeff! * (p("cells") - 25)), "power point");
    if (panels.has("open volts of a string")) {
      const [vocV, , vocCoeff] = panels.figures("open volts of a string");
      close(p("open volts of a string"), vocV! * (1 - vocCoeff! * (p("cells") - 25)), "open");
      const lit = (p("light of that section") * panels.figures("current of that light")[0]!) / 1000;
      close(p("current of that light"), lit, "lit");
      const ohm = panels.figures("panel voltage")[0]!;
      const [, , , k, n, dark, drop] = panels.figures("panel current");
      const a = (p("power point of a string") * k!) / n! - dark! * drop!;
      const b = (p("open volts of a string") * k!) / n! - dark! * drop!;
      const x = Math.max(0, (p("bank as the controller sees it") + lit * ohm - a) / (b - a));
      close(p("panel current"), lit * (1 - x * x), "current");
      close(p("panel voltage"), p("bank as the controller sees it") + p("panel current") * ohm, "volts");
    } else {
      const [k, n, dark, drop] = panels.figures("panel voltage");
      expect(k).toBe(p("sections conducting"));
      close(p("panel voltage"), (p("power point of a string") * k!) / n! - dark! * drop!, "volts");
      const [perKw] = panels.figures("panel current");
      close(p("panel current"), (p("light of that section") * perKw!) / 1000, "current");
    }
    close(p("DC power"), p("set out") * p("panel voltage") * p("panel current"), "DC");
  });

  test("what the bank is offered follows from the power", () => {
    const kept = panels.figures("stated losses")[1]!;
    close(p("stated losses"), p("DC power") * (1 - kept), "losses");
    const [, ohm] = panels.figures("cable");
    close(p("cable"), p("set out") * (p("panel current") * kept) ** 2 * ohm!, "cable");
    const before = p("DC power") - p("stated losses") - p("cable");
    close(p("controller"), before * (1 - panels.figures("controller")[1]!), "controller");
    close(p("offered to the bank"), before - p("controller") - p("held back by its limit"), "offered");
  });

  test("the bank's charge follows from what it is offered and what is wanted", () => {
    const gear = loads.numbers.slice(
      0,
      loads.numbers.findIndex((number) => number.name === "all gear"),
    );
    close(
      loads.value("all gear"),
      gear.reduce((sum, number) => sum + number.value, 0),
      "gear",
    );
    close(loads.value("wanted"), loads.value("all gear") + loads.value("controllers' own draw"), "wanted");
    close(bank.value("served"), loads.value("wanted") - loads.value("unserved"), "served");
    const power = bank.value("solar offered") - bank.value("solar spilled") + sourcesW(bank) - bank.value("served");
    close(bank.value("power"), power, "power");
    // A lead bank on charge adds its polarisation, of which small currents raise only their share.
    const [wholeV = 0, wholeA = 1] = bank.figures("voltage");
    const polarisationV = wholeV * Math.min(1, bank.value("current") / wholeA);
    const addedV = bank.value("current") * bank.value("resistance") + polarisationV;
    close(bank.value("voltage"), bank.value("open-circuit voltage halfway") + addedV, "volts");
    close(bank.value("current"), bank.value("power") / bank.value("voltage"), "amps");
    const [minutes, sixty, back = 1] = bank.figures("charge after");
    const factor = bank.has("Peukert factor") ? bank.value("Peukert factor") : back;
    close(
      bank.value("charge after"),
      bank.value("charge before") + (bank.value("current") * minutes! * factor) / sixty!,
      "charge",
    );
  });

  test("the volts on a peak follow from the peak of the site", () => {
    const radio = loads.numbers.filter((number) => number.name.endsWith(": volts on a peak") && number.value > 0);
    for (const { name } of radio) {
      // Of the formula's own figures, 2 and 4 stand between the pack's ohms and those of the main feed, where there is one.
      const [amps, feedOhm, ohm, , , mainOhm = 0] = loads.figures(name);
      const peakW = loads.value(name.replace("volts on a peak", "peak of the site"));
      const charging = bank.value("solar offered") - bank.value("solar spilled") + sourcesW(bank);
      const e = bank.value("open-circuit voltage before");
      const short = peakW - charging;
      if (short <= 0) continue;
      const i = (2 * short) / (e + Math.sqrt(e * e - 4 * ohm! * short));
      const v = e - ohm! * i;
      const j = (2 * peakW) / (v + Math.sqrt(v * v - 4 * mainOhm * peakW));
      close(loads.value(name), v - mainOhm * j - amps! * feedOhm!, name);
    }
  });
});
