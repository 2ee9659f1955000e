/**
 * `npx tsx docs/fits/climate.ts`: how often what an ensemble states comes true. Every four days of twelve long records, and plans run through their
 * years, with the climate of the position alone (all that stands for the record itself left out) and with the record's own monthly figures.
 * Needs the records beside the checkout. Add `write` to rewrite tests/truth/data/reliability.json, the counts that may be kept.
 */
import { writeFileSync } from "node:fs";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { holdsReliability } from "../../tests/truth/climate/holdsReliability.ts";
import { longRecords } from "../../tests/truth/climate/longRecords.ts";
import { ownClimate, positionAlone } from "../../tests/truth/climate/positionAlone.ts";
import { type KeptReliability, RELIABILITY_MEMBERS } from "../../tests/truth/climate/reliabilityTable.ts";
import { STATED, windowReliability } from "../../tests/truth/climate/windowReliability.ts";

const tables = await loadClimateTables();
const records: KeptReliability["records"] = [];
for (const record of longRecords()) {
  const alone = positionAlone(tables, record);
  const own = ownClimate(record);
  const { ktRms } = alone.provenance;
  records.push({
    id: record.id,
    name: record.name,
    ktRms,
    position: windowReliability(alone, record, record.years, RELIABILITY_MEMBERS, ktRms),
    own: windowReliability(own, record, record.years, RELIABILITY_MEMBERS, 0),
    plansByPosition: await holdsReliability(record, alone, ktRms),
    plansByOwn: await holdsReliability(record, own, 0),
  });
  console.log(record.id, JSON.stringify(records.at(-1)));
}
const kept: KeptReliability = {
  what: "Of every four days running of twelve long records of daily clearness, how many brought less light than a stated share of the members; and plans with odds between 5 and 95 of 100 and in how many years of the record they held",
  how: "Worked out by docs/fits/climate.ts; seasons from December on; position: stations within 30 km of the record left out",
  stated: [...STATED],
  records,
};
if (process.argv.includes("write")) {
  const text = JSON.stringify(kept, (_, value) => (typeof value === "number" ? Number(value.toFixed(4)) : value));
  writeFileSync("tests/truth/data/reliability.json", `${text.replaceAll('{"id"', '\n{"id"')}\n`);
}
