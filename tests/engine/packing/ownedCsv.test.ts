import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { ownedCsv, readOwnedCsv } from "../../../engine/packing/ownedCsv.ts";
import type { OwnedThing } from "../../../engine/packing/ownedThing.ts";

const THINGS: readonly OwnedThing[] = [
  {
    id: "a",
    kind: "battery",
    name: "Block, 280 Ah",
    count: 1,
    chemistry: "lfp",
    blockAh: 280,
    massKg: 23.5,
    who: "club",
  },
  {
    id: "b",
    kind: "battery",
    name: 'Old "traction" pair',
    count: 2,
    get: "borrow",
    cost: 12.5,
    chemistry: "flooded",
    blockAh: 180,
    blockV: 6,
    healthShare: 0.7,
    maxChargeA: 30,
    maxDischargeA: 90,
    internalResistanceOhm: 0.004,
    setupMinutes: 10,
  },
  { id: "c", kind: "panel", name: "Folding, 120 W", count: 3, get: "buy", ratedW: 120, vmpV: 18.2, as: "meadow" },
  {
    id: "d",
    kind: "controller",
    name: "Small one",
    count: 1,
    get: "hand",
    maxChargeA: 10,
    controller: "pwm",
    maxPanelV: 50,
  },
  {
    id: "e",
    kind: "generator",
    name: "Noisy",
    count: 1,
    chargerA: 25,
    fuelL: 4,
    continuousW: 900,
    from: "09:00",
    to: "18:30",
  },
  { id: "f", kind: "lead", name: "Reel", count: 2, lengthM: 25, awg: "2/0" },
  { id: "g", kind: "lead", name: "Thin", count: 1, lengthM: 7.5, mm2: 4, who: "Mara\nand Tibor" },
];

const unnamed = (things: readonly OwnedThing[]) => things.map(({ id: _, ...thing }) => thing);

function thingsOf(text: string): readonly OwnedThing[] {
  const read = readOwnedCsv(text);
  if (!read.ok) throw new Error(read.sentences.join(" "));
  return read.things;
}

test("every field of every kind comes back from the file", () => {
  expect(unnamed(thingsOf(ownedCsv(THINGS)))).toEqual(unnamed(THINGS));
});

test("the example's list reads, and its columns are those that it is written with", () => {
  const text = readFileSync("scenarios/walnut-grove-owned.csv", "utf8");
  const things = thingsOf(text);
  expect(things.map(({ kind, count }) => [kind, count])).toEqual([
    ["battery", 1],
    ["battery", 2],
    ["panel", 2],
    ["lead", 1],
    ["generator", 1],
  ]);
  expect(ownedCsv(things).split("\n")[0]).toBe(text.split("\n")[0]);
});

const name = fc.oneof(
  fc.string({ minLength: 1, maxLength: 20, unit: "binary" }),
  fc
    .tuple(
      fc.constantFrom("=", "+", "-", "@", "\t", "\r", "'", "''", "'=", "＝", "−", '"', ","),
      fc.string({ maxLength: 10 }),
    )
    .map(([first, rest]) => `${first}${rest}`),
);

test("no name starts a formula where a spreadsheet opens the file, and each comes back as it was", () => {
  fc.assert(
    fc.property(name, name, (first, who) => {
      // What is blank is no name, and half a surrogate pair is no text.
      fc.pre([first, who].every((each) => each.trim() !== "" && !/\p{Surrogate}/u.test(each)));
      const thing: OwnedThing = { ...THINGS[0]!, name: first, who };
      const text = ownedCsv([thing]);
      for (const cell of [first, who]) {
        if (!/^[=+\-−@\t\r＝＋－＠]/.test(cell) || /^[+\-−]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i.test(cell)) continue;
        expect(text.includes(`,${cell},`)).toBe(false);
        expect(text).toContain(`'${cell.replaceAll('"', '""')}`);
      }
      expect(unnamed(thingsOf(text))).toEqual(unnamed([thing]));
    }),
    { numRuns: 300 },
  );
});

test("a file of a spreadsheet reads: semicolons, decimal commas, capitals, a mark of its encoding, columns in any order", () => {
  const text = "\ufeffNAME;What;W;KG  each;How many;Shelf\r\nFolding;Panel;120;6,5;2;left\r\n;;;;;\r\n";
  const read = readOwnedCsv(text);
  expect(read).toEqual({
    ok: true,
    things: [{ id: "folding", kind: "panel", name: "Folding", count: 2, ratedW: 120, massKg: 6.5 }],
    passedOver: ["Shelf"],
  });
});

test("two things of one name are two things, each with a short name of its own", () => {
  const things = thingsOf("what,name,W\npanel,Fold,100\npanel,Fold,100\npanel,=§,100\n");
  expect(things.map(({ id }) => id)).toEqual(["fold", "fold-2", "thing"]);
});

test.each([
  ["", 'no column "what"'],
  ["what,W\npanel,100\n", 'no column "name"'],
  ["what,name\n", "titles and nothing under them"],
  ["what,name,what\npanel,a,b\n", 'two columns "what"'],
  ["what,name\nkettle,Kettle\n", 'Line 2: "what" is "kettle", but must be one of battery, panel'],
  ["what,name\npanel,Fold\n", 'Line 2 (panel): "W" is empty, but a panel has to say it; fill it in.'],
  ["what,name,W\npanel,Fold,many\n", '"W" is "many", but must be a number from 1 to 800 W'],
  ["what,name,W\npanel,Fold,0x64\n", '"W" is "0x64", but must be a number'],
  ["what,name,W\npanel,Fold,NaN\n", '"W" is "NaN", but must be a number'],
  ["what,name,W,how many\npanel,Fold,100,1.5\n", '"how many" is "1.5", but must be a whole number from 0 to 60'],
  ["what,name,W,kg each\npanel,Fold,100,-3\n", '"kg each" is "-3", but must be a number from 0 to 5000 kg'],
  ["what,name,W,Ah\npanel,Fold,100,280\n", '"Ah" is "280", but it says nothing about a panel; leave it empty'],
  ["what,name,m\nlead,Reel,25\n", "either in AWG or in mm²"],
  ["what,name,W,at hand\npanel,Fold,100,maybe\n", '"at hand" is "maybe", but must be one of hand, borrow, buy'],
])("%j is refused in a sentence", (text, sentence) => {
  const read = readOwnedCsv(text);
  expect(read.ok).toBe(false);
  expect(read.ok ? "" : read.sentences.join(" ")).toContain(sentence);
});

test("a file that is too long, and one with too many things, are refused in a sentence", () => {
  const sentencesOf = (text: string) => {
    const read = readOwnedCsv(text);
    return read.ok ? [] : read.sentences;
  };
  expect(sentencesOf(`what,name,W\n${"panel,Fold,100\n".repeat(101)}`)).toEqual([
    "The file has 101 things; a list has at most 100.",
  ]);
  expect(sentencesOf("x".repeat(300_001))[0]).toContain("has 300001 characters");
});

test("whatever is in a file, it is a list or sentences", () => {
  fc.assert(
    fc.property(
      fc.string({ unit: "binary", maxLength: 200 }),
      fc.constantFrom("", "what,name,W\npanel,"),
      (text, head) => {
        const read = readOwnedCsv(head + text);
        if (read.ok) expect(read.things.length).toBeGreaterThan(0);
        else for (const sentence of read.sentences) expect(sentence).toMatch(/^.+[.]$/s);
      },
    ),
    { numRuns: 300 },
  );
});
