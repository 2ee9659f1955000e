import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { forecastMore, forecastSentence } from "../../engine/answers/forecast/forecastWords.ts";
import { oddsPicture } from "../../engine/answers/forecast/oddsPicture.ts";
import type { Side, VersusPicture } from "../../engine/answers/versus/versusPicture.ts";
import { versusSentence } from "../../engine/answers/versus/versusWords.ts";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { oddsReport, runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";

const said = (words: readonly { readonly text: string }[]) => words.map(({ text }) => text).join("");

/** The hut whose bank freezes: its charge stays where it is, out of reach, and the loads go without. */
async function hut(isFrozen: boolean) {
  const { variants, ...document } = JSON.parse(readFileSync("scenarios/polar-hut.json", "utf8"));
  const changes = variants.find(({ id }: { id: string }) => id === "cold-box").changes;
  const changed = applyChanges(document, isFrozen ? changes : []);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, "4127");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return oddsPicture(ready.ensemble, oddsReport(ready.ensemble, runMembers(ready.ensemble, 0, 40)));
}

test("a bank that keeps its reserve because nobody can reach it does not hold, and why is said", async () => {
  const frozen = await hut(true);
  expect(frozen.report.holds.count).toBe(0);
  expect(frozen.report.goesWithout.count).toBe(40);
  const series = [{ name: "Open box", picture: frozen, look: "first" as const }] as never;
  expect(said(forecastSentence(series))).toMatch(/holds to .* in 0 of 100 skies\.$/);
  expect(forecastMore(series, "4127")).toMatch(
    /^In 100 of 100 the charge keeps its reserve and something goes without/,
  );
  const plan = [{ name: "Plan", picture: await hut(false), look: "first" as const }] as never;
  expect(forecastMore(plan, "4127")).not.toContain("goes without all the same");
});

test("a difference in the dark is told where holding tells none, or the other way", () => {
  const odds = (share: number) => ({ share, count: 1000 * share, low: share, high: share });
  const side = (holds: number, dark: number) => ({ holds: odds(holds), dark: odds(dark) }) as unknown as Side;
  const versus = (mean: number, darks: readonly [number, number]): VersusPicture =>
    ({
      members: 1000,
      first: side(0.5, darks[0]),
      second: side(0.5 + mean, darks[1]),
      holds: { mean, low: mean === 0 ? -0.01 : mean, high: mean === 0 ? 0.01 : mean },
      margin: { mean: 0, low: 0, high: 0 },
      more: { cost: null, massKg: 0, minutes: 0 },
      tally: { both: 0, onlySecond: Math.max(0, 1000 * mean), onlyFirst: Math.max(0, -1000 * mean), neither: 0 },
    }) as unknown as VersusPicture;
  const told = (pair: VersusPicture) =>
    said(
      versusSentence([
        { id: "a", name: "A", look: "second", side: pair.first, pair: null },
        { id: "b", name: "B", look: "first", side: pair.second, pair },
      ]),
    );
  expect(told(versus(0, [0.6, 0.1]))).toBe(
    "B against A: it holds about as often, but loads go dark in 10 of 100, not 60.",
  );
  expect(told(versus(0.2, [0.1, 0.4]))).toMatch(/one that holds; but loads go dark in 40 of 100, not 10\.$/);
  expect(told(versus(0.2, [0.4, 0.1]))).toMatch(/one that holds\.$/);
  expect(told(versus(-0.2, [0.4, 0.1]))).toMatch(/one that fails; but loads go dark in 10 of 100, not 40\.$/);
});
