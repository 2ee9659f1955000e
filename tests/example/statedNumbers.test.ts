import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { FARTHEST_SHIFT_MS, LEAST_SHIFT_MS } from "../../engine/actual/clockOfLog.ts";
import { FOUND_BELOW, OPEN_FROM, USUAL_FIT_MEMBERS } from "../../engine/actual/fitCorrection.ts";
import { ROW_REACH } from "../../engine/actual/loggedSteps.ts";
import { DRIVERS_FEWEST_MEMBERS, DRIVERS_MOST_MEMBERS } from "../../engine/drivers/drivers.ts";
import { FEWEST_ON_A_SIDE } from "../../engine/drivers/driversReport.ts";
import { MOST_LANES } from "../../engine/ensemble/stepMember.ts";
import { FEWEST_SHARE, LARGEST_CHI_SQUARE } from "../../engine/learn/filter.ts";
import { LEARN_FEWEST_MEMBERS, LEARN_MOST_MEMBERS } from "../../engine/learn/learn.ts";
import { WORTH_SAYING_SHARE } from "../../engine/learn/lessons.ts";
import { MOST_READINGS } from "../../engine/learn/reading.ts";
import { DISCOUNT } from "../../engine/learn/shrinkAndJitter.ts";
import { USUAL_MEMBERS, USUAL_TARGET_SHARE } from "../../engine/library/askOptions.ts";
import { MOST_METER_BYTES, MOST_METER_ROWS } from "../../engine/meter/readMeterLog.ts";
import { CHARGE_BINS, POWER_BINS } from "../../engine/odds/oddsPart.ts";
import { wilson } from "../../engine/odds/wilson.ts";
import { MOST_CELLS } from "../../engine/size/sizeAxis.ts";
import { LATE_MS } from "../../explorer/parts/makeLasting.ts";
import { FIRST_ANSWER_KB } from "../firstAnswerKb.ts";

const { engines } = JSON.parse(readFileSync("package.json", "utf8")) as { engines: { node: string } };
/** Members of which none fails that it takes until the interval lies above a share. */
const fewestToShow = (share: number) => {
  let members = 1;
  while (wilson(members, members).low < share) members++;
  return members;
};
const WORDS: Record<number, string> = { 0.25: "a quarter", 1.5: "one and a half", 4: "four" };
const inWords = (value: number) => WORDS[value] ?? `${value}`;

/** What pages say about the code, each with the code's own number in its place. */
const STATED: Record<string, readonly string[]> = {
  "docs/command-line.md": [
    `\`--members N\` (${LEARN_FEWEST_MEMBERS} to ${LEARN_MOST_MEMBERS})`,
    `which: \`500:1000\` is those from 500 up to but not including 1000; ${USUAL_MEMBERS} when left out`,
    `At most ${MOST_CELLS} cells`,
    `skies in 100 in which the bank is to hold; ${100 * USUAL_TARGET_SHARE} when left out`,
    `read from counts in ${CHARGE_BINS} and ${POWER_BINS} steps`,
    `the same members (${USUAL_MEMBERS} unless \`--members\` says otherwise)`,
    `${DRIVERS_FEWEST_MEMBERS} to ${DRIVERS_MOST_MEMBERS}, ${USUAL_MEMBERS} when left out`,
    `if fewer than ${FEWEST_ON_A_SIDE} of the 2 N hold, or fail`,
    `at most ${MOST_READINGS} entries`,
    `at most ${MOST_METER_BYTES / 1e6} MB and ${MOST_METER_ROWS.toLocaleString("en")} rows`,
  ],
  "docs/odds.md": [
    `counts in ${CHARGE_BINS} classes of charge and ${POWER_BINS} of power`,
    `would fall under ${100 * FEWEST_SHARE} % of the members`,
    `chi-square over ${LARGEST_CHI_SQUARE}`,
    `discount ${DISCOUNT}`,
    `more than ${WORTH_SAYING_SHARE} of the spread that it had`,
    `${fewestToShow(0.95)} members are the fewest that can show 95 in 100, ${fewestToShow(0.99)} show 99`,
    `nothing across gaps of more than ${inWords(ROW_REACH)} usual intervals`,
    `every shift up to ${FARTHEST_SHIFT_MS / 3_600_000} h`,
    `if it is ${LEAST_SHIFT_MS / 60_000} min or more`,
    `to ${USUAL_FIT_MEMBERS}) are run under drawn skies`,
    `*found* where the spread falls under ${FOUND_BELOW} of the plan's, *leaning* up to ${OPEN_FROM}, else *open*`,
  ],
  "README.md": [`Node ${engines.node.replace(">=", "")} or newer`],
  "DEVELOPERS.md": [
    `Members of an ensemble run ${inWords(MOST_LANES)} side by side`,
    `within ${inWords(LATE_MS / 1000)} of a second is not announced`,
    `the first answer has ${FIRST_ANSWER_KB} kB of compressed scripts to live in`,
  ],
};

test.each(Object.entries(STATED))(
  "what %s says of the code's bins, limits and sizes is what the code has",
  (page, stated) => {
    const text = readFileSync(page, "utf8").replace(/\s+/g, " ");
    expect(stated.filter((words) => !text.includes(words))).toEqual([]);
  },
);
