import { html, type Markup } from "../../drawing/html.ts";
import { figure } from "../../words/numbers.ts";
import type { AnswersPage } from "../answersPage.ts";
import { oddsOf } from "../forecast/ask.ts";
import { list } from "../reportParts.ts";
import { runOf } from "../run/ask.ts";
import { changesOf } from "../scenario/changesOf.ts";
import { scenarioFigures } from "../scenario/scenarioFigures.ts";
import { cautionsOf } from "./cautionsOf.ts";
import { cautionTitle, LEFT_OUT, NO_PERMIT } from "./cautionWords.ts";

/** What was assumed and what can hurt: the end of every report and of every print. */
export function reportEnd(page: AnswersPage): Markup {
  const scenarios = page.scenarios();
  const { seed, members } = page.drawn();
  const drawn = scenarios.flatMap(({ id }) => oddsOf(page, id).result?.members ?? []);
  const remarks = scenarios.flatMap(({ id }) => [
    ...(oddsOf(page, id).result?.remarks ?? []),
    ...(runOf(page, id).result?.remarks ?? []),
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
