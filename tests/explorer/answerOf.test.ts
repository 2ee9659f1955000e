import { expect, test } from "vitest";
import { type AnswerFacts, answerOf } from "../../engine/answers/run/answerOf.ts";
import { runPicture } from "../../engine/answers/run/runPicture.ts";
import { energy, figure, hours, percent } from "../../engine/words/numbers.ts";
import { exampleRun, variantChanges } from "./exampleRun.ts";

const run = runPicture(await exampleRun(variantChanges("meadow")));
const facts: AnswerFacts = {
  verdict: {
    ...run.verdict,
    holds: true,
    dark: false,
    lowestShare: 0.314,
    marginShare: 0.114,
    lowestMs: Date.UTC(2026, 9, 11, 5, 40),
    darkFromMs: null,
    belowReserveFromMs: null,
    radios: [],
  },
  ruler: run.ruler,
  endMs: Date.UTC(2026, 9, 11, 14),
  reserveShare: 0.2,
  solarWh: 4070,
  spilledWh: 206,
  wantedWh: 5460,
  withWords: [],
  look: "first",
};
const said = (change: Partial<AnswerFacts>) => {
  const { sentence, more } = answerOf({ ...facts, ...change });
  const plain = (text: string) => text.replaceAll("\u202f", " ");
  return { sentence: plain(sentence.map((words) => words.text).join("")), more: plain(more.join(" ")) };
};

test("a bank that holds: when, how low, how far above the reserve", () => {
  expect(said({}).sentence).toBe("The bank holds to Sun 16:00; lowest 31 % on Sun 07:40, 11 points over the reserve.");
  expect(said({}).more).toContain("206 Wh is spilled");
});

test("a bank that ends at its lowest does not say the same time twice", () => {
  const verdict = { ...facts.verdict, lowestMs: facts.endMs };
  expect(said({ verdict }).sentence).toBe(
    "The bank holds to Sun 16:00 and ends at its lowest, 31 %, 11 points over the reserve.",
  );
});

test("under the reserve but never dark", () => {
  const verdict = { ...facts.verdict, holds: false, belowReserveFromMs: Date.UTC(2026, 9, 11, 1) };
  expect(said({ verdict }).sentence).toBe(
    "The bank is under its 20 % reserve from Sun 03:00 and down to 31 % by Sun 07:40; it never goes dark.",
  );
});

test("dark: from when and for how long, and the plan is named in front", () => {
  const verdict = {
    ...facts.verdict,
    holds: false,
    dark: true,
    belowReserveFromMs: Date.UTC(2026, 9, 10, 15),
    darkFromMs: Date.UTC(2026, 9, 11, 3),
    darkH: 8.5,
    unservedWh: 1234,
  };
  const { sentence, more } = said({ verdict, withWords: ["two panels", "one station less"] });
  expect(sentence).toBe(
    "Two panels, one station less: the bank is under its 20 % reserve from Sat 17:00 and dark from Sun 05:00, 8.5 h in all.",
  );
  expect(more).toContain("1.23 kWh unserved");
});

test("a station that drops out is told apart from the charge", () => {
  const lost = { chargeV: 0.1, leadV: 0.9, packV: 0.2 };
  const radio = { id: "a", name: "Position", minimumV: 11.73, lowestV: 11.2, lowestMs: 0, dropoutH: 2, lost };
  expect(said({ verdict: { ...facts.verdict, radios: [radio] } }).more).toContain(
    "Position falls to 11.20 V on transmit peaks, under its 11.73 V, for 2 h: mostly the lead: lead and fuses take 0.90 V, a full bank has 0.10 V more at rest, the pack takes 0.20 V.",
  );
});

test("numbers as print sets them", () => {
  expect(figure(1234567)).toBe("1\u202f234\u202f567");
  expect(figure(-12)).toBe("−12");
  expect(figure(-0.2)).toBe("0");
  expect(percent(0.085)).toBe("9\u202f%");
  expect(energy(999.4)).toBe("999\u202fWh");
  expect(energy(999.6)).toBe("1.00\u202fkWh");
  expect(hours(9.96)).toBe("10\u202fh");
});
