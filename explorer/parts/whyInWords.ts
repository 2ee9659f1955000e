import { withLabels } from "../../engine/fields/fieldWords.ts";
import { numberPart, type SchemaNode } from "../../engine/fields/formSchema.ts";
import { plainFigure, shownUnit, toShown } from "../../engine/fields/shownValue.ts";

/** What a field is for and what is usual, as it stands beside the field. */
export function whyInWords(node: SchemaNode): string {
  const number = numberPart(node);
  const what = (number.quantity?.what ?? node.description ?? "")
    .replace(/, as a share of 1$/, "")
    .replace(/, from -?[\d.]+ to .*$/, "");
  const sentence = what === "" ? "" : withLabels(`${what.charAt(0).toUpperCase()}${what.slice(1).replace(/\.$/, "")}.`);
  const { typical, why = "" } = number.quantity ?? {};
  if (typical === undefined) return sentence;
  const unit = shownUnit(node);
  const [low, high] = typical.map((value) => plainFigure(toShown(value, number)));
  const range = `Usually ${low} to ${high}${unit === "" || unit === "°" ? unit : `\u202f${unit}`}${why === "" ? "." : `: ${why.replace(/\.?$/, ".")}`}`;
  return `${sentence} ${range}`.trim();
}
