import { expect, test } from "vitest";
import { limitOptions } from "../../../engine/answers/limits/ask.ts";
import { limitsCsv } from "../../../engine/answers/limits/limitsCsv.ts";
import {
  cautionsBeside,
  limitsMore,
  limitsSentence,
  limitWords,
  marginWords,
  valueWords,
} from "../../../engine/answers/limits/limitsWords.ts";
import { voltChain } from "../../../engine/answers/limits/voltChain.ts";
import { limits } from "../../../engine/checks/limits.ts";
import { exampleRun } from "../exampleRun.ts";

/** A little over the example's own lowest, at which the pack alone takes more than its radios have to spare. */
const NEAR_EMPTY = { lowestShare: 0.08 };
const THIN_LEAD = { at: "stations.hf-run.feed.cable", to: { awg: "18", oneWayM: 2.5 } };

test("what is over stands first, each place named once; what is close and not stated is counted after it", async () => {
  const report = limits(await exampleRun([THIN_LEAD]), NEAR_EMPTY);
  expect(limitsSentence(report)).toMatch(
    /^Four things are over their limit: lead of HF run position \(drop at 15\.0 A, fuse for the wire behind it, current the wire must carry, volts on the worst peak\)\.$/,
  );
  expect(limitsMore(report)).toMatch(/^Two things are close to their limit\./);
  expect(cautionsBeside(report).map(({ id }) => id)).toEqual(["fire"]);
});

test("nothing over, nothing close: the sentence says what is left", async () => {
  const report = limits(await exampleRun(), NEAR_EMPTY);
  const only = (verdict: string) => ({ ...report, lines: report.lines.filter((line) => line.verdict === verdict) });
  expect(limitsSentence(report)).toMatch(/^Nothing is over its limit; .* close to it: /);
  expect(limitsSentence(only("within"))).toBe("Everything that is stated stays within its limit.");
  expect(cautionsBeside(only("within"))).toEqual([]);
});

test("values, limits and margins read as print sets them", () => {
  const line = { limit: 7, unit: "A", bound: "most", isAssumed: false, marginShare: -1.15 } as never;
  const plain = (text: string) => text.replaceAll("\u202f", " ");
  expect(plain(limitWords(line))).toBe("at most 7.0 A");
  expect(plain(marginWords(line))).toBe("115 % beyond");
  expect(plain(marginWords({ marginShare: 0.004 } as never))).toBe("under 1 % to spare");
  expect(plain(valueWords(0.137, "share"))).toBe("13.7 %");
  expect(plain(valueWords(20_000, "A"))).toBe("20 000 A");
  expect(valueWords(null, "A")).toBe("?");
});

test("the volts that the links take lead from the bank to the radio", async () => {
  const report = limits(await exampleRun(), NEAR_EMPTY);
  const [radio] = report.radios;
  const { rows, place } = voltChain(radio!, report.openV);
  expect(rows.at(-2)!.toV).toBeCloseTo(radio!.radioV, 9);
  expect(rows.filter(({ kind }) => kind === "weak").map(({ name }) => name)).toEqual([radio!.weakLink.link]);
  expect(place(report.openV)).toBe(1);
  expect(place(radio!.minimumV)).toBeLessThan(place(radio!.radioV));
});

test("the entry's choices reach the engine, and the table leaves with its sources", async () => {
  const options = limitOptions({ scenario: "roof", dropIn100: 10, chargeIn100: 50, coldestC: -12 });
  expect(options).toEqual({ targetDropShare: 0.1, lowestShare: 0.5, coldestC: -12 });
  const report = limits(await exampleRun(), options);
  const csv = limitsCsv(report).split("\n");
  expect(csv).toHaveLength(report.lines.length + 1);
  expect(csv[0]).toMatch(/^verdict,where,what,value,bound,limit,unit/);
  expect(limitsCsv(report)).toContain("NEC 690.7");
});
