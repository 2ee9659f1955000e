import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import ts from "typescript-api";
import { beforeAll, describe, expect, test } from "vitest";
import { noteHtml } from "../../../engine/answers/note/noteHtml.ts";
import { html } from "../../../engine/drawing/html.ts";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { htmlOf, reportOf } from "./reportOf.ts";

const example: Notebook = { ...exampleNotebook("example"), members: 60 };
let report: string;
beforeAll(async () => {
  report = await htmlOf(example);
}, 60_000);

const EMPTY = new Set(["area", "br", "hr", "img", "input", "link", "meta", "rect", "circle", "line", "path"]);

/** Reads markup as strictly as XML: every element closed by its own name, in order. @returns names with how often each is there */
function elementsOf(markup: string): Map<string, number> {
  const found = new Map<string, number>();
  const open: string[] = [];
  for (const [, close, name, rest] of markup.matchAll(
    /<(\/?)([a-z][a-z0-9]*)((?:\s+[a-zA-Z-]+(?:="[^"]*")?)*\s*\/?)>/gi,
  )) {
    if (close === "/") expect(open.pop(), `closed by ${name}`).toBe(name);
    else {
      found.set(name!, (found.get(name!) ?? 0) + 1);
      if (!rest!.endsWith("/") && !EMPTY.has(name!)) open.push(name!);
    }
  }
  expect(open).toEqual([]);
  return found;
}

describe("markup", () => {
  test("text and attributes are escaped, markup and lists are taken as they are, nothing is left out of nothing", () => {
    const bad = `"><script>alert('1')</script>&`;
    expect(html`<a title="${bad}">${[bad, html`<b>${1.2345}</b>`, null, false]}</a>`.text).toBe(
      `<a title="&quot;&gt;&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;&amp;">&quot;&gt;&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;&amp;<b>1.23</b></a>`,
    );
  });

  const say = () => ({ text: "<b>7</b>", state: "fresh" });
  test.each([
    ["<script>alert(1)</script> **bold**", /<(script)/i],
    ["[go](javascript:alert(1)) [j](JaVaScRiPt:alert(1)) [d](data:text/html,x) [v](vbscript:x)", /<a|href/i],
    ['[a](https://example.org/"onmouseover=alert(1))', / onmouseover=/],
    ['<img src=x onerror="alert(1)"> ![x](https://example.org/x.png "onload=1")', /<img/i],
    ["`<iframe>` \n\n```html\n<iframe>\n```\n", /<iframe/i],
    ["<svg><style>*{}</style></svg>\n\n<a href='javascript:1'>x</a>", /<(svg|style|a)\b/i],
    ["{holds, roof} ", /<b>7/],
    ["| a |\n|:-:|\n| <img src=x> |\n\n- [x] done", /<(img|input)|align=/i],
    ["[x]: javascript:alert(1)\n[x] <javascript:alert(1)> <https://example.org>", /href="java/i],
  ])("a note keeps its harm as text: %s", (text, harm) => {
    const said = noteHtml(text, say);
    expect(said).not.toMatch(harm);
    elementsOf(said);
  });

  test("links of a note lead to the web, to mail and down the page", () => {
    const said = noteHtml("[w](https://example.org/a?b=1&c=2) [m](mailto:a@example.org) [h](#entry-run)", say);
    expect([...said.matchAll(/href="([^"]*)"/g)].map(([, href]) => href)).toEqual([
      "https://example.org/a?b=1&amp;c=2",
      "mailto:a@example.org",
      "#entry-run",
    ]);
  });
});

describe("the report of the example", () => {
  test("is well-formed, has no script, no handler and no address to fetch from", () => {
    const elements = elementsOf(report.slice(report.indexOf("<html")).replace(/<style>[\s\S]*?<\/style>/, ""));
    for (const name of ["script", "img", "iframe", "link", "object", "form", "input"])
      expect(elements.get(name)).toBe(undefined);
    expect(report).not.toMatch(/\son[a-z]+=/i);
    expect(report).not.toMatch(/\b(src|srcset|action|xlink:href)=/);
    const urls = [...report.matchAll(/url\((["']?)([^)]{0,20})/g)].map(([, , to]) => to!);
    expect(urls.every((to) => to.startsWith("#") || to.startsWith("data:font/"))).toBe(true);
    expect(report).not.toMatch(/undefined|NaN|\[object|Infinity/);
    const ids = [...report.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("says everything: each entry, its live figures, the changes in words, seed, climate and cautions", () => {
    for (const { title } of example.entries) expect(report).toContain(title);
    expect(report).toMatch(/<span class="live live-fresh" title="holds, roof">\d+ of 100<\/span>/);
    expect(report).not.toContain('class="live live-unknown"');
    expect(report).toContain("2 folding panels added, in the meadow");
    expect(report).toMatch(/60 skies[\s\S]*seed <strong>4127<\/strong>/);
    expect(report).toContain("Climate from");
    expect(report).toContain("Invented: club, place, people");
    expect(report).toContain("Fuse every conductor as close to the bank&#39;s post as practicable");
    expect(report).toContain("A plan and not a permit.");
    expect([...report.matchAll(/<svg class="drawing"/g)].length).toBeGreaterThanOrEqual(7);
    expect(report.indexOf('id="assumptions"')).toBeGreaterThan(report.lastIndexOf('id="entry-'));
  });

  test("is the same text when it is made again, and another for another seed", async () => {
    expect(await htmlOf(example)).toBe(report);
    expect(await htmlOf({ ...example, seed: "4128" })).not.toBe(report);
  });
});

test("names and titles that are markup stay text, and a note's script too", async () => {
  const bad = `</style></title><script>alert(1)</script>"'<img src=x onerror=alert(1)>`;
  const roof = example.scenarios[0]!;
  if (!("document" in roof)) throw new Error("the first scenario has a document");
  const made = await htmlOf({
    ...example,
    title: bad,
    members: 20,
    scenarios: [{ ...roof, name: bad, document: { ...roof.document, name: bad, note: bad } }],
    entries: [
      { id: "note", kind: "note", title: bad, doc: { text: `${bad} {holds, roof} [x](javascript:alert(1))` } },
      { id: "forecast", kind: "forecast", title: bad, doc: { scenarios: ["roof"] } },
      { id: "run", kind: "run", title: bad, doc: { scenario: "roof" } },
      { id: "shade", kind: "shade", title: bad, doc: { scenario: "roof" } },
      { id: "ledger", kind: "ledger", title: bad, doc: { scenario: "roof" } },
    ],
  });
  expect(made).not.toMatch(/<script|<img|href="javascript/i);
  expect([...made.matchAll(/<\/style>/g)]).toHaveLength(1);
  elementsOf(made.slice(made.indexOf("<html")).replace(/<style>[\s\S]*?<\/style>/, ""));
});

test("a scenario that cannot be worked out is said where it stands, and the rest is there", async () => {
  const made = await reportOf({
    ...example,
    members: 20,
    scenarios: [
      ...example.scenarios,
      { id: "lost", name: "Lost", basedOn: "roof", changes: [{ at: "bank.blockAh", to: -1 }] },
    ],
    entries: [
      { id: "run", kind: "run", title: "Run", doc: { scenario: "roof" } },
      { id: "odds", kind: "forecast", title: "Odds", doc: { scenarios: ["roof", "lost"] } },
    ],
  });
  if (!made.ok) throw new Error("reads");
  expect(made.wrong.join(" ")).toMatch(/blockAh/);
  expect(made.html).toMatch(/<p class="wrong">[^<]*blockAh/);
  expect(made.html).toContain("Charge, sun and loads over time");
});

test("what is no notebook is refused in sentences", async () => {
  expect(await reportOf({ format: "something" })).toMatchObject({
    ok: false,
    sentences: [expect.stringMatching(/no notebook/)],
  });
});

test("nothing that the report is made of knows the page: no component, no DOM", () => {
  const seen = new Set<string>();
  const strangers: string[] = [];
  const visit = (path: string) => {
    if (seen.has(path)) return;
    seen.add(path);
    for (const { fileName } of ts.preProcessFile(readFileSync(path, "utf8")).importedFiles) {
      if (!fileName.startsWith(".")) {
        if (/^(solid-js|dompurify|idb)/.test(fileName)) strangers.push(`${path}: ${fileName}`);
      } else if (fileName.endsWith(".tsx")) strangers.push(`${path}: ${fileName}`);
      else if (fileName.endsWith(".ts")) visit(join(dirname(path), fileName));
    }
  };
  visit("engine/report/reportOfText.ts");
  expect(seen.size).toBeGreaterThan(80);
  expect(strangers).toEqual([]);
});
