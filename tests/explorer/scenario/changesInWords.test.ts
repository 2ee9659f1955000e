import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";

const read = (name: string) => JSON.parse(readFileSync(`scenarios/${name}.json`, "utf8")) as ScenarioInput;
const grove = read("walnut-grove");
const moor = read("peat-moor");
const hut = read("polar-hut");

function words(base: ScenarioInput, changes: readonly Change[]): string[] {
  const applied = applyChanges(base, changes);
  if (!applied.ok) throw new Error(applied.problems[0]!.message);
  const document = applied.document as ScenarioInput;
  const result = readScenario(document);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return changesInWords(changes, base, document).map((line) => line.replaceAll("\u202f", " "));
}

const variant = (base: ScenarioInput, id: string) => base.variants!.find((each) => each.id === id)!.changes as Change[];

test.each<[string, ScenarioInput, readonly Change[], string[]]>([
  [
    "panels added",
    grove,
    variant(grove, "meadow"),
    ["2 folding panels added, in the meadow, re-aimed at 07:30, 11:00, 14:30"],
  ],
  ["a station at home", grove, variant(grove, "one-station"), ["HF data position stays at home"]],
  ["a second block with what follows from it", grove, variant(grove, "two-blocks"), ["bank 280 → 560 Ah"]],
  ["another radio", moor, variant(moor, "small-radio"), ["HF in the tent: a 10 W radio, was 100 W"]],
  [
    "another chemistry",
    moor,
    variant(moor, "lfp"),
    ["bank LFP, was AGM", "reserve 20 %, was 50 %", "left by age 100 %, was 90 %"],
  ],
  [
    "another controller",
    moor,
    variant(moor, "mppt"),
    [
      "Folding panel by the wall: controller MPPT, was PWM",
      "Folding panel by the wall: efficiency 95 %, was 99 %",
      "Folding panel by the wall: own draw 0.3 W, was 0.1 W",
    ].slice(0, 1),
  ],
  [
    "no heating",
    hut,
    variant(hut, "cold-box"),
    ["heating pad in the battery box left at home", "bank temperature as the air, was 8 °C"],
  ],
  ["inputs together", hut, variant(hut, "both"), ["all inputs charge together"]],
  [
    "other dates and air",
    hut,
    variant(hut, "march"),
    ["Fri 5 Mar 12:00 to Mon 15 Mar 12:00", "air -14 to -4 °C".replaceAll("-", "−")],
  ],
  ["transmit power", grove, [{ at: "stations.hf-run.transmitW", to: 100 }], ["HF run position at 100 W, was 50 W"]],
  [
    "sending share",
    grove,
    [{ at: "stations.hf-run.sendingShare", to: 0.3 }],
    ["HF run position sending 30 % of the time, was 15 %"],
  ],
  ["hours staffed", grove, [{ at: "stations.vhf.staffed", to: [] }], ["VHF talk-in staffed never, was 10:00–18:00"]],
  ["modes", grove, [{ at: "stations.vhf.modes", to: [{ mode: "ssb", share: 1 }] }], ["VHF talk-in in SSB, was FM"]],
  ["one panel more", grove, [{ at: "panels.roof.count", to: 3 }], ["Van roof: 3 panels, was 2"]],
  [
    "propped up",
    grove,
    [{ at: "panels.roof.mount", to: { kind: "fixed", tiltDeg: 40, azimuthDeg: 180 } }],
    ["Van roof: propped at 40° facing 180°"],
  ],
  [
    "moved",
    grove,
    [
      { at: "panels.roof.at.eastM", to: 4 },
      { at: "panels.roof.at.northM", to: -3 },
    ],
    ["Van roof moved 4 m east and 3 m south"],
  ],
  [
    "other modules",
    grove,
    [{ at: "panels.roof.module", to: { ratedW: 100 } }],
    ["Van roof: other panels of 100 W, was 200 W"],
  ],
  [
    "panels set out by the clock",
    grove,
    [{ at: "panels.roof.out", to: [{ from: "08:00", to: "17:00" }] }],
    ["Van roof: out 08:00–17:00"],
  ],
  ["panels at home", grove, [{ at: "panels.roof", remove: true }], ["van roof left at home"]],
  [
    "a draw",
    grove,
    [{ at: "gear.fridge.working", to: { drawW: 30 } }],
    ["Compressor fridge: 30 W, was 3.5 A at 12.8 V"],
  ],
  [
    "a use",
    grove,
    [{ at: "gear.lamps.use", to: { when: "afterDark" } }],
    ["Lamps inside and at the steps: after dark, was 18:00–23:00, 06:00–07:30"],
  ],
  ["how many", grove, [{ at: "gear.phones.count", to: 2 }], ["Phones charging: 2, was 4"]],
  [
    "gear added",
    grove,
    [
      {
        at: "gear",
        add: { id: "kettle", name: "Travel kettle", working: { drawW: 150 }, use: { when: "always", share: 0.02 } },
      },
    ],
    ["travel kettle added, 150 W, always, on 2 % of it"],
  ],
  [
    "what goes with a radio",
    moor,
    [{ at: "stations.hf.companions.tablet.working", to: { drawW: 8 } }],
    ["HF in the tent, logging tablet: draw while working 8 W, was 5 W"],
  ],
  [
    "what no longer goes with a radio",
    moor,
    [{ at: "stations.hf.companions.tablet", remove: true }],
    ["HF in the tent: without logging tablet"],
  ],
  ["a main feed left out", moor, [{ at: "mainFeed", remove: true }], ["main feed left out"]],
  ["reserve", grove, [{ at: "bank.reserveShare", to: 0.3 }], ["reserve 30 %, was 20 %"]],
  ["a field left out in the base", moor, [{ at: "bank.inParallel", to: 2 }], ["bank 40 → 80 Ah"]],
  [
    "size and reserve at once",
    grove,
    [
      { at: "bank.blockAh", to: 200 },
      { at: "bank.reserveShare", to: 0.1 },
    ],
    ["bank 280 → 200 Ah", "reserve 10 %, was 20 %"],
  ],
  [
    "sky in words",
    grove,
    [{ at: "weather", to: { kind: "words", days: ["clear", "fair", "cloudy", "mixed"] } }],
    ["sky clear, fair, cloudy, mixed"],
  ],
  ["a clear sky", grove, [{ at: "weather", to: { kind: "clear" } }], ["sky clear all the time"]],
  ["a later end", grove, [{ at: "time.end", to: "2026-10-12T10:00" }], ["ends Mon 12 Oct 10:00, was Sun 11 Oct 16:00"]],
  ["a tree felled", grove, [{ at: "obstacles.old-walnut", remove: true }], ["old walnut taken away"]],
  [
    "a box put up",
    grove,
    [{ at: "obstacles", add: { kind: "box", id: "tent", eastM: 5, northM: 12, heightM: 2, lengthM: 3, widthM: 3 } }],
    ["box added, 2 m high"],
  ],
  ["a taller tree", grove, [{ at: "obstacles.old-walnut.heightM", to: 15 }], ["Old walnut: height 15 m, was 13 m"]],
  ["a tree somewhere else", grove, [{ at: "obstacles.old-walnut.northM", to: -10 }], ["Old walnut moved 3.5 m south"]],
  [
    "a generator",
    grove,
    [
      {
        at: "sources",
        add: { kind: "mains", id: "hook", name: "Hook-up", chargerA: 20, available: [{ from: "18:00", to: "22:00" }] },
      },
    ],
    ["hook-up added, mains, 20 A, 18:00–22:00"],
  ],
  [
    "what goes without",
    grove,
    [{ at: "shedding", to: ["fridge", "vhf"] }],
    ["goes without first: compressor fridge, VHF talk-in"],
  ],
  [
    "a forecast",
    grove,
    [{ at: "knownDays", to: [{ date: "2026-10-09", sky: "overcast" }] }],
    ["forecast: Fri 9 Oct overcast"],
  ],
  [
    "how sure",
    grove,
    [{ at: "sureness", to: { canopy: "measured" } }],
    ["light through the trees measured, was a guess"],
  ],
  [
    "a model",
    grove,
    [{ at: "models", to: { transposition: "perez" } }],
    ["sky light on a tilt Perez, was Hay and Davies"],
  ],
  [
    "a cable",
    grove,
    [{ at: "panels.roof.controller.cable.oneWayM", to: 12 }],
    ["Van roof: cable, one way 12 m, was 4 m"],
  ],
  [
    "another place",
    grove,
    [
      { at: "place.latitudeDeg", to: 50.2 },
      { at: "place.name", to: "Birch hill (invented)" },
    ],
    ["at Birch hill (invented)"],
  ],
  ["a name", grove, [{ at: "name", to: "Spring weekend" }], ["called “Spring weekend”"]],
  ["what it costs", grove, [{ at: "bank.bring.cost", to: 700 }], ["price 700, was 900"]],
  ["the same again", grove, [{ at: "bank.blockAh", to: 280 }], []],
  ["a default written out", moor, [{ at: "bank.inParallel", to: 1 }], []],
])("%s", (_, base, changes, expected) => {
  expect(words(base, changes)).toEqual(expected);
});

test("a document that cannot be read is still put in words", () => {
  const changes: Change[] = [{ at: "stations.hf-run.sendingShare", to: 122 }];
  const applied = applyChanges(grove, changes);
  if (!applied.ok) throw new Error("the place exists");
  expect(changesInWords(changes, grove, applied.document as ScenarioInput)).toHaveLength(1);
});
