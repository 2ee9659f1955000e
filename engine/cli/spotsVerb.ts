import { plain } from "../answers/column.ts";
import { KINDS } from "../answers/kinds.ts";
import type { SpotsPicture } from "../answers/shade/spotsPicture.ts";
import { SPOT, spotRows, spotsCsv } from "../answers/shade/spotsRows.ts";
import { ofWhichSky, spotsSentence } from "../answers/shade/spotsWords.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { spotsPlan } from "../spots/spotsPlan.ts";
import { answerTo } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { sixDecimals } from "./figures.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const spotsVerb: Verb = {
  name: "spots",
  usage: "spots SCENARIO [--variant ID] [--group ID] [--json | --csv]",
  purpose:
    "Says where to put panels: what each group brings a day where it is, at the best spot that its lead reaches and at the nearest as good, and a vehicle's roof over its heading.",
  options: {
    group: { type: "string", help: "only this panel group, by its id (all when left out)" },
    json: { type: "boolean", help: "print everything as JSON, with every spot of the map" },
    csv: { type: "boolean", help: "print the named spots and every spot of the map as CSV" },
  },
  run: async ({ scenario, variant, values, context, print }) => {
    if (values.json === true && values.csv === true)
      throw new CallError("--json and --csv are two ways to print; give one of them.");
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const groups = groupsOf(opened.value.scenario, values.group);
    // One that has no panels is refused in the words of the plan.
    const first = spotsPlan(opened.value.scenario, groups[0] ?? "");
    if (!first.ok) return first;
    const pictures: SpotsPicture[] = [];
    for (const group of groups) {
      const found = await answerTo(KINDS.shade, [opened.value], { group });
      if (!found.ok) return found;
      pictures.push(found.value);
    }
    if (values.csv === true) print(pictures.map(csvOf).join("\n").trimEnd());
    else print((values.json === true ? spotsJson : spotsText)(opened.value.scenario, pictures));
    return { ok: true };
  },
};

function groupsOf({ panels }: Scenario, asked: string | boolean | undefined): string[] {
  const known = panels.filter(({ count }) => count > 0).map(({ id }) => id);
  if (typeof asked !== "string" || known.length === 0) return known;
  if (!known.includes(asked))
    throw new CallError(
      `--group is "${asked}" but must be one of ${known.join(", ")}: the panel groups of this scenario.`,
    );
  return [asked];
}

const csvOf = (picture: SpotsPicture) => `panel group,${picture.group.id}\n${spotsCsv(picture)}`;

/** What `spots --json` prints; documented in `docs/command-line.md`. */
function spotsJson({ name, place }: Scenario, pictures: readonly SpotsPicture[]): string {
  const groups = pictures.map(({ report: { isCoarse: _, ...report } }) => report);
  return JSON.stringify(
    { format: "duskline-spots", version: 1, scenario: { name, place }, groups },
    (_key, value: unknown) => (typeof value === "number" ? sixDecimals(value) : value),
  );
}

function spotsText({ name, place }: Scenario, pictures: readonly SpotsPicture[]): string {
  const lines = [
    `${name} · ${place.name}`,
    ...pictures.flatMap((picture) => [
      "",
      spotsSentence(picture)
        .map(({ text }) => text)
        .join(""),
      "",
      textTable(spotRows(picture.report), Object.values(SPOT)),
      `Wh a day at the bank's terminals, ${ofWhichSky(picture)}; spots every ${picture.report.grid.stepM} m.`,
    ]),
  ];
  return plain(lines.join("\n"));
}
