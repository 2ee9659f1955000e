/** `npm run docs`: writes what `docs/` derives from the code, and the accuracy tables from the last test run. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { scenarioSchemaText } from "../engine/scenario/scenarioSchema.ts";
import { accuracyRows, TRUTH_FOLDER } from "../tests/accuracyRows.ts";
import { documentShapeText } from "./documentFrame.ts";
import { exampleOdds } from "./exampleOdds.ts";
import { keptReliability, reliabilitySvg } from "./reliability.ts";
import { replaceBetween } from "./replaceBetween.ts";
import { scenarioFormatText } from "./scenarioFormat.ts";
import { readmeAccuracy, validationText } from "./validation.ts";

const at = (path: string) => new URL(path, import.meta.url);

writeFileSync(at("scenario.schema.json"), scenarioSchemaText());
writeFileSync(at("../engine/notebook/documentShape.json"), documentShapeText());
writeFileSync(at("scenario-format.md"), scenarioFormatText());
writeFileSync(at("pictures/reliability.svg"), reliabilitySvg(keptReliability()));
const odds = readFileSync(at("odds.md"), "utf8");
writeFileSync(at("odds.md"), replaceBetween(odds, "example odds", await exampleOdds()));
const rows = existsSync(TRUTH_FOLDER) ? accuracyRows() : [];
const leftOut = rows.filter((row) => "skipped" in row).length;
if (rows.length > 0 && leftOut === 0) {
  // Both are made before either is written: a run of single tests has not measured all that the README wants.
  const [validation, accuracy] = [validationText(), readmeAccuracy()];
  writeFileSync(at("validation.md"), validation);
  const readme = readFileSync(at("../README.md"), "utf8");
  writeFileSync(at("../README.md"), replaceBetween(readme, "accuracy", accuracy));
} else if (leftOut > 0) {
  console.log(`The accuracy tables stay as they are: ${leftOut} comparisons want reference data that is not here.`);
} else console.log("The accuracy tables stay as they are: run npm test first, which measures them.");
