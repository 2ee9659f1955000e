import { askRuler, tellEnd } from "../answers/kinds.ts";
import { saidWords } from "../answers/reportParts.ts";
import { drawingPatterns } from "../drawing/drawingPatterns.ts";
import { html, Markup } from "../drawing/html.ts";
import saidCss from "../drawing/saidWords.css?raw";
import { headlineOf } from "../notebook/headlineOf.ts";
import { letterOf } from "../notebook/letterOf.ts";
import { dateSpan } from "../ruler/rulerClock.ts";
import { drawingRules } from "./drawingRules.ts";
import reportCss from "./report.css?raw";
import type { ReportPage } from "./reportPage.ts";
import { tellsOf } from "./tellsOf.ts";

/** The report forbids itself everything but its own rules: no script, nothing from anywhere. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'";

/**
 * A notebook as one HTML file that needs no script and no network: the answer, each entry with its picture and its table, then what
 * was assumed and what can hurt. Equal notebooks and results give equal text, in Node as in a browser.
 */
export async function reportHtml(page: ReportPage): Promise<string> {
  const notebook = page.notebook();
  const [tells, reportEnd] = await Promise.all([tellsOf(notebook), tellEnd()]);
  const answer = headlineOf(page, notebook);
  const { ruler } =
    notebook.scenarios.map(({ id }) => page.find(askRuler(id)).result).find((run) => run !== null) ?? {};
  const rules = [drawingRules, saidCss, reportCss].join("\n").replace(/\/\*[\s\S]*?\*\//g, "");
  const entries = notebook.entries.map(
    (entry, i) =>
      html`<section class="entry entry-${entry.kind}" id="entry-${entry.id}"><h2><span class="letter">${letterOf(i)}</span> ${entry.title}</h2>${tells.get(entry.kind)!.section(page, entry.doc)}</section>`,
  );
  return `<!doctype html>
${
  html`<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${new Markup(POLICY)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="generator" content="duskline">
<title>${notebook.title}</title>
<style>${new Markup(rules.replaceAll("</", "<\\/"))}</style>
</head>
<body>
<svg class="patterns" width="0" height="0" aria-hidden="true">${drawingPatterns}</svg>
<header>
<p class="sheet-name"><strong>${notebook.title}</strong>${ruler !== undefined && html` <span class="dates">${dateSpan(ruler)}</span>`}</p>
<h1 class="answer">${answer?.words == null ? notebook.title : saidWords(answer.words)}</h1>
${answer?.words != null && html`<p class="more">${answer.more}</p>`}
<nav aria-label="Entries"><ol class="index">${notebook.entries.map(
    ({ id, title }, i) => html`<li><a href="#entry-${id}"><span class="letter">${letterOf(i)}</span> ${title}</a></li>`,
  )}<li><a href="#assumptions">What was assumed</a></li><li><a href="#cautions-at-the-end">Cautions</a></li></ol></nav>
</header>
<main>
${entries.map((entry) => html`${entry}\n`)}${reportEnd(page)}
</main>
<footer><p>Made with duskline from a notebook. This file holds no program and fetches nothing.</p></footer>
</body>
</html>`.text
}
`;
}
