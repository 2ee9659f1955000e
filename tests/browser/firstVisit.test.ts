import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { FIRST_ANSWER_KB } from "../firstAnswerKb.ts";
import { firstVisit } from "./firstVisit.ts";
import { launchBrowser } from "./launchBrowser.ts";
import { allWorkedOut, plain } from "./openExplorer.ts";
import { notebookWith, openNotebook } from "./openNotebook.ts";

const BUILT = "dist/explorer";
let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const gzippedKb = (file: string) => gzipSync(readFileSync(join(BUILT, file))).length / 1000;

test(`before the first answer, page and workers ask for at most ${FIRST_ANSWER_KB} kB of scripts, compressed, tables included`, async () => {
  const { beforeAnswer } = await firstVisit(browser, inject("explorerUrl"));
  const names = beforeAnswer.map((file) => basename(file));
  for (const needed of [/^index-/, /^deskWorker-/, /^poolWorker-/, /^climate-\d/]) {
    expect(names.filter((name) => needed.test(name)).length).toBeGreaterThan(0);
  }
  expect(beforeAnswer.reduce((sum, file) => sum + gzippedKb(file), 0)).toBeLessThan(FIRST_ANSWER_KB);
  // What fields are called and how their changes read waits for the form; what an error says of them does not.
  const scripts = beforeAnswer.map((file) => readFileSync(join(BUILT, file), "utf8")).join("");
  for (const words of ["Volts at the power point", "A charger on mains.", "{item} sending {now}"]) {
    expect([words, scripts.includes(words)]).toEqual([words, false]);
  }
  expect(scripts).toContain("voltage at the power point");
});

/** What a built script imports from its neighbours, at once and later. */
function importsOf(file: string): { now: string[]; later: string[] } {
  const code = readFileSync(join(BUILT, "assets", file), "utf8");
  const names = (pattern: RegExp) => [...code.matchAll(pattern)].map(([, name]) => name!);
  return {
    now: names(/(?:from|import)\s*[`"']\.\/([^`"']+\.js)/g),
    later: names(/import\(\s*[`"']\.\/([^`"']+\.js)/g),
  };
}

test("whatever on the page reads a scenario brings the table of zones along, and the workers of the first answer do not", () => {
  const scripts = readdirSync(join(BUILT, "assets")).filter((name) => name.endsWith(".js"));
  const only = (words: string) => {
    const found = scripts.filter((name) => readFileSync(join(BUILT, "assets", name), "utf8").includes(words));
    expect([words, found.length]).toEqual([words, 1]);
    return found[0]!;
  };
  const [asks, table] = [only("the table of zones is asked before it is here"), only("Indian/Kerguelen")];
  const withAll = (roots: readonly string[], also: "later" | null): Set<string> => {
    const met = new Set(roots);
    for (const file of met) {
      const { now, later } = importsOf(file);
      for (const next of also === null ? now : [...now, ...later]) met.add(next);
    }
    return met;
  };
  const starting = (name: string) => scripts.filter((script) => script.startsWith(`${name}-`));
  const onPage = withAll([...starting("index"), ...starting("logWorker"), ...starting("sunlightWorker")], "later");
  const later = [...onPage].flatMap((file) => importsOf(file).later);
  const reads = [...new Set(later)].filter((file) => file !== table && withAll([file], null).has(asks));
  expect(reads.length).toBeGreaterThan(8);
  // What works an answer out runs in the desk's worker, which fetches the table before it begins.
  const onItsOwn = reads.filter((file) => !/^(work|readWeatherFile)-/.test(file));
  expect(onItsOwn.filter((file) => !withAll([file], null).has(table))).toEqual([]);
  for (const worker of ["deskWorker", "poolWorker"]) {
    const met = withAll(starting(worker), null);
    expect([worker, met.has(asks), met.has(table)]).toEqual([worker, true, false]);
  }
  expect(withAll(starting("index"), null).has(asks)).toBe(false);
});

test("a place that leaves its zone open has it looked up, and its answer is the same", async () => {
  const answers: string[] = [];
  for (const isOpen of [false, true]) {
    const notebook = notebookWith(exampleNotebook("probe").entries.filter(({ kind }) => kind === "forecast"));
    const scenarios = notebook.scenarios.map((scenario) => {
      if (!("document" in scenario) || !isOpen) return scenario;
      const { zone, ...place } = scenario.document.place as { zone?: string };
      expect(zone).toBe("Europe/Vienna");
      return { ...scenario, document: { ...scenario.document, place } };
    });
    const opened = await openNotebook(browser, { ...notebook, scenarios });
    await allWorkedOut(opened.page);
    answers.push(plain(await opened.page.locator("h1.answer").textContent()));
    expect(opened.complaints).toEqual([]);
  }
  expect(answers[0]).toContain("holds to Sun 16:00");
  expect(answers[1]).toBe(answers[0]);
});
