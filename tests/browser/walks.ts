import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inflateSync } from "node:zlib";
import { type PreviewServer, preview } from "vite";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { bitsBundle } from "../bitsBundle.ts";
import { differingBits } from "../bitsOf.ts";
import { bitsReport, type ScenarioBits } from "../bitsReport.ts";
import { record, recordSkipped } from "../truth/record.ts";
import type { Driven, Found } from "./driven.ts";
import { plain } from "./openExplorer.ts";
import { exampleWith } from "./openNotebook.ts";
import { notRed } from "./redLight.ts";

const TITLE = "Tried elsewhere";
const RUN = "#run .verdict";
const SEED = "4127";
const MEMBERS = 20;
const AH = '//*[@aria-label="Ampere-hours of one block"]';
const button = (words: string) => `//button[normalize-space()="${words}"]`;
const link = (words: string) => `//a[normalize-space()="${words}"]`;
const labelled = (words: string) => `//*[@aria-label="${words}"]`;

const bitsRow = (engine: string) => ({
  what: `arrays and numbers of an ensemble that differ in any bit between Node and ${engine}`,
  source: `the same code in a worker of the installed ${engine}`,
});

/** Runs in the page: what a worker that is made of this program says, or what went wrong with it. */
const reportOf = (program: string): Promise<ScenarioBits[] | string> => {
  const worker = new Worker(URL.createObjectURL(new Blob([program], { type: "text/javascript" })));
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = (event) => reject(new Error(event.message));
  });
};

/** What the page handed over as a file, once it is there whole. */
function savedFile(folder: string): unknown {
  const [name] = readdirSync(folder).filter((file) => file.endsWith(".json"));
  try {
    return JSON.parse(readFileSync(join(folder, name!), "utf8"));
  } catch {
    return null;
  }
}

/** How many pages a PDF has. Its objects may lie packed within streams (ISO 32000-1:2008, 7.5.7). */
function pagesOf(pdf: Buffer): number {
  const text = pdf.toString("latin1");
  expect(text.slice(0, 5)).toBe("%PDF-");
  const streams = [...text.matchAll(/\/ObjStm\b.*?stream\r?\n(.*?)\r?\nendstream/gs)];
  const packed = streams.map(([, stream]) => inflateSync(Buffer.from(stream!, "latin1")).toString("latin1"));
  return [text, ...packed].join("\n").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/**
 * The main ways through the page in a browser that the other tests do not drive, one after the other as one person would go them.
 * Where there is no such browser the tests say why and count as skipped.
 */
export function walks(engine: string, found: Found): void {
  if ("why" in found) {
    test(`${engine} is tried`, ({ skip }) => {
      recordSkipped({ ...bitsRow(engine), skipped: found.why });
      skip(`${engine} is not tried here: ${found.why}.`);
    });
    return;
  }
  describe(engine, () => {
    let driven: Driven;
    let server: PreviewServer;
    let url: string;
    beforeAll(async () => {
      // A server of its own, because it is stopped on the way.
      server = await preview({ logLevel: "warn", preview: { port: 0, strictPort: false } });
      url = server.resolvedUrls!.local[0]!;
      driven = await found.start();
      console.log(`The main walks go through ${driven.name}.`);
    });
    const folder = mkdtempSync(join(tmpdir(), "duskline-walks-"));
    const stop = async () => {
      (server.httpServer as { closeAllConnections?: () => void }).closeAllConnections?.();
      await server.close();
    };
    afterAll(async () => {
      await driven?.close();
      await stop();
      rmSync(folder, { recursive: true, force: true });
    });

    const text = async (css: string) =>
      plain(await driven.look((css) => document.querySelector(css)?.textContent ?? "", css));
    /** Between two pages there is nothing to look at. */
    const until = (look: () => Promise<unknown>) => expect.poll(() => look().catch((error) => String(error)));
    const isThere = (css: string) => driven.look((css) => document.querySelector(css) !== null, css);
    const answer = async (): Promise<string> => {
      await until(() => isThere("svg.strata")).toBe(true);
      await until(() => isThere(".page:not(.working)")).toBe(true);
      return text("h1");
    };
    const kept = () => until(() => text(".work-line")).toContain("All kept in this browser.");

    // What stands on the page tells more than that something else never came.
    beforeEach(({ onTestFailed }) => {
      onTestFailed(async () => {
        const seen = await driven
          .look(() => `${location.href}\n${document.querySelector("main")?.textContent}`)
          .catch(String);
        console.log(`${engine} stands at ${seen.slice(0, 600)}`, driven.complaints);
      });
    });

    test("same bits: a worker of the page prepares and counts as Node does", async () => {
      await driven.goTo("about:blank");
      const program = `${await bitsBundle()}
        bits.bitsReport(${JSON.stringify(SEED)}, ${MEMBERS}).then((report) => postMessage(report), (error) => postMessage(String(error)));`;
      const [here, there] = await Promise.all([bitsReport(SEED, MEMBERS), driven.look(reportOf, program)]);
      if (typeof there === "string") throw new Error(there);
      expect(there.map(({ name }) => name)).toEqual(here.map(({ name }) => name));
      const differing = here.flatMap((ours, k) =>
        (["prepared", "counted"] as const).flatMap((part) =>
          differingBits(ours[part], there[k]![part]).map((name) => `${ours.name}: ${name}`),
        ),
      );
      record({
        ...bitsRow(engine),
        tolerance: 0,
        why: "same seed, same bits",
        worst: differing.length,
        unit: "",
        n: here.reduce((sum, ours) => sum + Object.keys(ours.prepared).length + Object.keys(ours.counted).length, 0),
      });
      expect(differing).toEqual([]);
      for (const { counted } of here) expect(Object.keys(counted).length).toBeGreaterThan(20);
    });

    test("start: six questions, answered by keyboard, end in a verdict", async () => {
      await driven.goTo(`${url}?new`);
      await driven.focus('//*[@role="application"]');
      for (const key of ["ArrowUp", "ArrowUp", "ArrowUp", "+", "ArrowLeft"] as const) await driven.press(key);
      await until(() => text("main")).toMatch(/53° N, 15° E/);
      await driven.focus('//button[starts-with(normalize-space(), "Work it out")]');
      await driven.press("Enter");
      expect(await answer()).toMatch(/the bank holds to \w{3} 14:00 in ((more|fewer) than )?\d+ of 100 skies/);
    });

    test("edit: the run follows what is typed, goes back with undo and comes again with redo", async () => {
      const before = await text(RUN);
      await driven.typeOver(AH, "400");
      await until(() => text(RUN)).not.toBe(before);
      await answer();
      const after = await text(RUN);
      await driven.focus(button("Undo"));
      await driven.press("Control", "z");
      await until(() => text(RUN)).toBe(before);
      await driven.press("Control", "y");
      await until(() => text(RUN)).toBe(after);
      await driven.typeOver(labelled("Title of the notebook"), TITLE);
      await driven.press("Enter");
      await kept();
    });

    test("save: the file holds what stands on the page", async ({ skip }) => {
      const { downloads } = driven;
      if (downloads === null) return skip("this driver hands no files over");
      await driven.click(button("Save file"));
      await until(async () => savedFile(downloads)).toMatchObject({ title: TITLE });
      expect(JSON.stringify(savedFile(downloads))).toContain('"blockAh":400');
    });

    test("reopen: a new visit finds on the shelf what was kept, and takes a notebook from a file", async () => {
      const before = await text(RUN);
      await driven.goTo(`${url}?shelf`);
      await driven.click(link(TITLE));
      await answer();
      expect(await text(RUN)).toBe(before);
      expect(await driven.look(() => document.querySelector<HTMLInputElement>(".notebook-title")!.value)).toBe(TITLE);
      const file = join(folder, "probe.json");
      writeFileSync(file, JSON.stringify(exampleWith("answer", "forecast", "plan", "run")));
      await driven.goTo(`${url}?shelf`);
      await driven.give('//input[@type="file"]', file);
      await until(() => driven.look(() => location.search)).toMatch(/notebook=probe/);
      expect(await answer()).toMatch(/in \d+ of 100 skies/);
    });

    test("print: pages without controls, black on white", async ({ skip }) => {
      if (driven.pdf === null) return skip("this driver prints nothing");
      const pages = pagesOf(Buffer.from(await driven.pdf()));
      expect(pages).toBeGreaterThan(2);
      expect(pages).toBeLessThan(10);
    });

    test("red light: no pixel of what is shown is green, blue or white", async () => {
      for (let turns = 0; turns < 2; turns++) await driven.click('//button[starts-with(normalize-space(), "Light:")]');
      const lookedAt = [".top", "#forecast select", "#plan", "#run svg", ".sheet-foot"];
      await driven.look(() => (document.activeElement as HTMLElement).blur());
      for (const css of lookedAt) expect(await notRed(driven, css)).toEqual([]);
      await driven.goTo(`${url}?new`);
      await until(() => driven.look(() => document.documentElement.dataset.light)).toBe("red");
      for (const css of ["h1", 'input[type="datetime-local"]', ".go"]) expect(await notRed(driven, css)).toEqual([]);
    });

    test("offline: with the server stopped the page comes, answers, keeps and finds again", async () => {
      await driven.look(async () => void (await navigator.serviceWorker.ready));
      await until(() => driven.look(() => navigator.serviceWorker.controller !== null)).toBe(true);
      await stop();
      await expect(fetch(url)).rejects.toThrow();
      await driven.goTo(`${url}?shelf`);
      await driven.click(link("Probe"));
      await answer();
      const before = await text(RUN);
      await driven.typeOver(AH, "120");
      await until(() => text(RUN)).not.toBe(before);
      const answered = await answer();
      await kept();
      await driven.goTo(`${url}?shelf`);
      await driven.click(link("Probe"));
      expect(await answer()).toBe(answered);
    });

    test("nothing was complained of on the way", () => {
      expect(driven.complaints).toEqual([]);
    });
  });
}
