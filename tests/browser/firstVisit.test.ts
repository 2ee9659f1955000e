import { readFileSync } from "node:fs";
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
  // What fields are called and how their changes read waits for the form; what an error says of them does not. Zones wait for a place without one.
  const scripts = beforeAnswer.map((file) => readFileSync(join(BUILT, file), "utf8")).join("");
  for (const words of ["Volts at the power point", "A charger on mains.", "{item} sending {now}", "Indian/Kerguelen"]) {
    expect([words, scripts.includes(words)]).toEqual([words, false]);
  }
  expect(scripts).toContain("voltage at the power point");
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
