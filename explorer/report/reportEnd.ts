import { html, type Markup } from "../drawing/html.ts";
import { cautionsOf } from "../entries/cautions/cautionsOf.ts";
import { cautionTitle, LEFT_OUT, NO_PERMIT } from "../entries/cautions/cautionWords.ts";
import { figure } from "../words/numbers.ts";
import type { ReportPage } from "./reportPage.ts";
import { list } from "./reportParts.ts";
import { changesOf } from "./reportSections.ts";
import { scenarioFigures } from "./scenarioFigures.ts";

/** What was assumed and what can hurt: the end of every report and of every print. */
export function reportEnd(page: ReportPage): Markup {
  const { scenarios, seed, members } = page.notebook();
  const drawn = scenarios.flatMap(({ id }) => page.odds(id).result?.members ?? []);
  const remarks = scenarios.flatMap(({ id }) => [
    ...(page.odds(id).result?.remarks ?? []),
    ...(page.run(id).result?.remarks ?? []),
  ]);
  const notes = scenarios.flatMap(({ id }) => page.document(id)?.note ?? []);
  const cautions = cautionsOf(scenarios.flatMap(({ id }) => page.document(id) ?? [])).filter(
    ({ id }) => id !== "permit",
  );
  const counts = drawn.length === 0 ? members : Math.min(...drawn);
  return html`<section class="entry" id="assumptions"><h2>What was assumed</h2>
<p>${figure(counts)} skies and courses of operating, drawn from the seed <strong>${seed}</strong>: the same seed draws the same ones on every machine. Odds carry the interval that a sample of this size leaves open in 95 of 100 cases.</p>
${[...new Set([...notes, ...remarks])].map((remark) => html`<p>${remark}</p>`)}
${scenarios.map((scenario) => {
  const changed = changesOf(page, scenario.id);
  const document = page.document(scenario.id);
  if (changed !== null) {
    return html`<h3>${scenario.name}</h3><p>${changed.base}, with ${changed.lines.length === 0 ? "nothing changed." : "these changes:"}</p>${list(changed.lines)}`;
  }
  return html`<h3>${scenario.name}</h3>${
    document !== null &&
    scenarioFigures(document).map(
      ({ group, figures }) =>
        html`<h4>${group}</h4><dl class="figures">${figures.map(
          ({ name, says }) => html`<div><dt>${name}</dt><dd>${says}</dd></div>`,
        )}</dl>`,
    )
  }`;
})}</section>
<section class="entry cautions" id="cautions-at-the-end"><h2>Cautions</h2><p><strong>${NO_PERMIT.head}</strong> ${NO_PERMIT.rest}</p><ul class="lines">${cautions.map((caution) => html`<li><strong>${cautionTitle(caution)}.</strong> ${caution.words}</li>`)}</ul><p>${LEFT_OUT}</p></section>`;
}
