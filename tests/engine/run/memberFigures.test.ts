import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { scenarioFormatText } from "../../../docs/scenarioFormat.ts";
import { openStream, PURPOSES, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import {
  drawFigures,
  FIGURE_CANOPY_NORMAL,
  FIGURE_CAPACITY_SHARE,
  FIGURE_IDLE_SHARE,
  FIGURE_START_SHARE,
  FIGURE_YIELD_SHARE,
  FIGURES,
  figureSpread,
  SURENESS_SPREAD,
} from "../../../engine/run/memberFigures.ts";
import { SURENESS_WORDS, type Sureness, type SurenessWord } from "../../../engine/scenario/chanceFields.ts";
import { plainInput, readPlain } from "../../truth/run/plainScenario.ts";

const words = seedWords("figures");
const MEMBERS = 20_000;
const ALL = (word: SurenessWord): Sureness => ({
  idleDraw: word,
  startCharge: word,
  bankHealth: word,
  canopy: word,
  panelYield: word,
});

function drawn(sureness: Sureness, startShare = 0.5, from = words): Float64Array[] {
  const spread = figureSpread(sureness);
  const state = new Uint32Array(STREAM_WORDS);
  const figures = new Float64Array(FIGURES);
  const columns = Array.from({ length: FIGURES }, () => new Float64Array(MEMBERS));
  for (let member = 0; member < MEMBERS; member++) {
    drawFigures(startShare, spread, state, from, member, figures);
    figures.forEach((figure, k) => {
      columns[k]![member] = figure;
    });
  }
  return columns;
}
const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
const centred = (values: Float64Array) => {
  const middle = mean(values);
  return values.map((value) => value - middle);
};
const sd = (values: Float64Array) => Math.sqrt(mean(centred(values).map((value) => value * value)));

test.each(SURENESS_WORDS)("figures that are %s spread as that word says, about the plan", (word) => {
  const columns = drawn(ALL(word));
  const places: [keyof Sureness, number, number][] = [
    ["startCharge", FIGURE_START_SHARE, 0.5],
    ["bankHealth", FIGURE_CAPACITY_SHARE, 1],
    ["panelYield", FIGURE_YIELD_SHARE, 1],
    ["idleDraw", FIGURE_IDLE_SHARE, 1],
  ];
  for (const [what, place, plan] of places) {
    const wanted = SURENESS_SPREAD[what][word];
    // Held within three deviations a normal draw keeps 0.9975 of its spread; 20,000 draws tell it to 0.5 %.
    expect(Math.abs(sd(columns[place]!) / wanted - 1), what).toBeLessThan(0.02);
    expect(Math.abs(mean(columns[place]!) - plan), what).toBeLessThan((4 * wanted) / Math.sqrt(MEMBERS));
    for (const value of columns[place]!) expect(Math.abs(value - plan)).toBeLessThan(3.0001 * wanted);
  }
  expect(Math.abs(sd(columns[FIGURE_CANOPY_NORMAL]!) - 1)).toBeLessThan(0.02);
});

test("a word that is less sure never spreads less", () => {
  for (const spreads of Object.values(SURENESS_SPREAD)) {
    expect(spreads.measured).toBeLessThan(spreads.dataSheet);
    expect(spreads.dataSheet).toBeLessThan(spreads.guess);
  }
});

test("figures have nothing to do with one another", () => {
  const columns = drawn(ALL("guess")).map(centred);
  for (let a = 0; a < FIGURES; a++) {
    for (let b = 0; b < a; b++) {
      const [one, other] = [columns[a]!, columns[b]!];
      const together = mean(one.map((value, m) => value * other[m]!));
      expect(Math.abs(together / (sd(one) * sd(other)))).toBeLessThan(4 / Math.sqrt(MEMBERS));
    }
  }
});

test("the charge at the start stays between empty and full", () => {
  for (const start of [0, 0.02, 0.99, 1]) {
    const [charge] = drawn(ALL("guess"), start);
    expect(Math.min(...charge!)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...charge!)).toBeLessThanOrEqual(1);
  }
});

test("another word moves no other figure, and another start moves no draw", () => {
  const sure = drawn(ALL("measured"));
  const other = drawn({ ...ALL("measured"), idleDraw: "guess" });
  for (const place of [FIGURE_START_SHARE, FIGURE_CAPACITY_SHARE, FIGURE_YIELD_SHARE, FIGURE_CANOPY_NORMAL]) {
    expect(other[place]).toEqual(sure[place]);
  }
  const fuller = drawn(ALL("measured"), 0.6);
  expect(fuller[FIGURE_IDLE_SHARE]).toEqual(sure[FIGURE_IDLE_SHARE]);
  expect(drawn(ALL("measured"), 0.5, seedWords("another"))[FIGURE_IDLE_SHARE]).not.toEqual(sure[FIGURE_IDLE_SHARE]);
});

test("figures have a stream to themselves: purposes that came later moved none of it", () => {
  // The first draws of purpose `figures`, number 8; whoever moves them changes every ensemble that was ever printed.
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, words, 3, "figures");
  expect(PURPOSES.figures).toBe(8);
  expect([PURPOSES.climate, PURPOSES.resample]).toEqual([9, 10]);
  const figures = new Float64Array(FIGURES);
  drawFigures(0.5, figureSpread(ALL("guess")), state, words, 3, figures);
  expect([...figures].map((figure) => +figure.toFixed(9))).toMatchInlineSnapshot(`
    [
      0.526164661,
      1.035012542,
      0.856632469,
      1.412742213,
      -1.116594982,
    ]
  `);
});

test("what is left out is taken as the format's page and the page on odds say", () => {
  const read = readPlain(plainInput());
  const page = scenarioFormatText();
  const odds = readFileSync("docs/odds.md", "utf8");
  for (const [what, word] of Object.entries(read.sureness)) {
    expect(page).toMatch(new RegExp(`^\\| \`${what}\` \\|.*\\| \`"${word}"\` \\|`, "m"));
  }
  expect(read.sureness).toEqual({
    idleDraw: "dataSheet",
    startCharge: "measured",
    bankHealth: "dataSheet",
    canopy: "guess",
    panelYield: "dataSheet",
  });
  expect(read.operators).toEqual({ betweenEventsShare: 0.2, betweenDaysShare: 0.15, byHourShare: 0.5 });
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  for (const [what, spreads] of Object.entries(SURENESS_SPREAD)) {
    const usual = read.sureness[what as keyof Sureness];
    const cells = SURENESS_WORDS.map((word) =>
      word === usual ? `**${percent(spreads[word])}**` : percent(spreads[word]),
    );
    expect(odds, what).toContain(`| \`${what}\` | ${cells.join(" | ")} | `);
  }
});

test("a word that is misspelt is named, with what may stand there", () => {
  for (const [what, value] of [
    ["idleDraw", "datasheet"],
    ["canopy", "sure"],
    ["startCharge", 3],
  ] as const) {
    expect(() => readPlain(plainInput({ sureness: { [what]: value } as never }))).toThrow(
      new RegExp(`sureness\\.${what} .*measured.*dataSheet.*guess`),
    );
  }
  expect(() => readPlain(plainInput({ sureness: { idledraw: "guess" } as never }))).toThrow(
    /sureness\.idledraw|idledraw/,
  );
});

test("the ensemble takes the words that the scenario has", () => {
  const climate = {
    kind: "typical" as const,
    monthlyKt: Array.from({ length: 12 }, () => 0.5),
    air: { maxC: 20, minC: 10 },
  };
  const ready = prepareEnsemble(
    readPlain(plainInput({ weather: climate, sureness: { panelYield: "guess" } })),
    {},
    "x",
  );
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  expect(ready.ensemble.spread[FIGURE_YIELD_SHARE]).toBe(SURENESS_SPREAD.panelYield.guess);
  expect(ready.ensemble.spread[FIGURE_IDLE_SHARE]).toBe(SURENESS_SPREAD.idleDraw.dataSheet);
});
