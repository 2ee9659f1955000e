import { html } from "../../drawing/html.ts";
import type { OfOne } from "../docShapes.ts";
import type { Tell } from "../kind.ts";
import { list, missing } from "../reportParts.ts";
import { runOf } from "../run/ask.ts";
import { shortened } from "../slideParts.ts";
import { changesOf } from "./changesOf.ts";
import { scenarioWords } from "./scenarioWords.ts";

export const tellScenario: Tell<OfOne> = {
  section: (page, { scenario }) => {
    const document = page.document(scenario);
    const changed = changesOf(page, scenario);
    return html`${missing([runOf(page, scenario)])}${
      document !== null && html`<p class="scenario-line">${scenarioWords(document)}</p>`
    }${
      changed !== null &&
      html`<p>Based on <strong>${changed.base}</strong>${changed.lines.length === 0 ? ", with nothing changed." : ", with these changes:"}</p>${list(changed.lines)}`
    }`;
  },
  slide: (page, { scenario }) => {
    const document = page.document(scenario);
    const changed = changesOf(page, scenario);
    return {
      body: html`<div class="slide-text">${document !== null && list(scenarioWords(document).split(" · "))}${
        changed !== null && html`<p>Based on <strong>${changed.base}</strong>:</p>${list(shortened(changed.lines))}`
      }</div>`,
    };
  },
};
