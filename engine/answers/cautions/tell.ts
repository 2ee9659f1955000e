import { html } from "../../drawing/html.ts";
import type { Tell } from "../kind.ts";
import { list } from "../reportParts.ts";
import { CAUTIONS, NO_PERMIT } from "./cautionWords.ts";

export const tellCautions: Tell<object> = {
  section: () => html`<p>They stand at the end of this report, with what was assumed.</p>`,
  slide: () => ({
    body: html`<div class="slide-text"><p><strong>${NO_PERMIT.head}</strong> ${NO_PERMIT.rest}</p>${list(CAUTIONS)}</div>`,
  }),
};
