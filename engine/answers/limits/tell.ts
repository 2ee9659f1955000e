import { html } from "../../drawing/html.ts";
import { volts } from "../../words/numbers.ts";
import type { Tell } from "../kind.ts";
import { columnsTable, foldedTable, list, missing, picture, table } from "../reportParts.ts";
import { NOT_YET, wide } from "../slideParts.ts";
import { limitsOf } from "./ask.ts";
import type { LimitsDoc } from "./doc.ts";
import {
  basisWords,
  briefQuantity,
  cautionsBeside,
  limitsMore,
  limitsSentence,
  limitWords,
  marginWords,
  rulesOf,
  VERDICTS,
  valueWords,
} from "./limitsWords.ts";
import { wiringDiagram, wiringDrawing } from "./wiringDrawing.ts";
import { toPutRight, WIRING_COLUMNS, WIRING_NOTE, wiringTitle } from "./wiringWords.ts";

/** A plan's wiring: the sentence, every line with its rule, the cautions, and where the volts go. */
export const tellLimits: Tell<LimitsDoc> = {
  section: (page, doc) => {
    const found = limitsOf(page, doc);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const rules = rulesOf(result);
    const rows = result.lines.map((line) => ({
      name: `${line.about}, ${briefQuantity(line)}`,
      figures: [
        word(line.verdict),
        valueWords(line.value, line.unit),
        limitWords(line),
        marginWords(line),
        line.verdict === "within" ? "" : line.change,
        String(rules.findIndex(({ words }) => words === line.rule.words) + 1),
      ],
    }));
    return html`${missing([found])}<p class="verdict">${limitsSentence(result)}</p><p class="more">${limitsMore(result)} ${basisWords(result)}</p><h3>The wiring: ${wiringTitle(result)}</h3>${picture(wiringDiagram(result))}${columnsTable("Every run with its currents, fuse, wire, length and drop", WIRING_COLUMNS, result.wiring)}<p class="more">${WIRING_NOTE}</p>${
      toPutRight(result).length > 0 && list(toPutRight(result).map(({ where, change }) => `${where}: ${change}`))
    }${table(
      "Every line with its value, limit, margin and rule, worst first",
      ["Where and what", "State", "Value", "Limit", "Margin", "What to change", "Rule"],
      rows,
    )}${cautionsBeside(result).map(({ title, words }) => html`<p><strong>${title}.</strong> ${words}</p>`)}${
      result.radios.length > 0 &&
      table(
        "Volts at each radio on its worst transmit peak, and what the links take",
        ["Radio", "At the radio", "It needs", ...result.radios[0]!.links.map(({ link }) => `${link}, V`), "Weak link"],
        result.radios.map((radio) => ({
          name: radio.name,
          figures: [
            volts(radio.radioV),
            volts(radio.minimumV),
            ...radio.links.map(({ lostV }) => lostV.toFixed(2)),
            radio.weakLink.link,
          ],
        })),
      )
    }${foldedTable("Rules and where they come from", list(rules.map(({ words, source }, i) => `${i + 1}. ${words} Source: ${source}.`)))}`;
  },
  drawing: (page, doc) => {
    const { result } = limitsOf(page, doc);
    return result === null ? null : wiringDrawing(result);
  },
  slide: (page, doc) => {
    const { result } = limitsOf(page, doc);
    if (result === null) return NOT_YET;
    return { words: [{ text: limitsSentence(result) }], body: wide(wiringDiagram(result)) };
  },
};

const word = (verdict: string) => VERDICTS.find((each) => each.verdict === verdict)!.word;
