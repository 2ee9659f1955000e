import { csvParseRows } from "d3-dsv";
import { expect, test } from "vitest";
import { stepsCsv } from "../../engine/answers/run/runCsv.ts";
import { runPicture } from "../../engine/answers/run/runPicture.ts";
import { csvText } from "../../engine/csvText.ts";
import { plainInput, traceInput } from "../truth/run/plainScenario.ts";

test.each(["=1+1", "+cmd|' /C calc'!A0", "-2+3", "\u22122+3", "@SUM(1)", "\tx", "\rx", "＝1+1", "-", '="a",b'])(
  "%j is made harmless and stays readable",
  (name) => {
    expect(csvParseRows(csvText([["a", name]]))).toEqual([["a", `'${name}`]]);
  },
);

test.each(["-5", "-5.25", "+3", "\u22123.5", "-1e-7", "-.5", "0", "a=b", "Fridge", "", "2026-10-08T10:00+02:00"])(
  "%j stays as it is",
  (cell) => {
    expect(csvParseRows(csvText([["a", cell]]))).toEqual([["a", cell]]);
  },
);

test("a trace's numbers stay numbers, negative ones too", () => {
  const gear = [{ id: "g", name: "=1", working: { drawW: 20 }, use: { when: "always" as const } }];
  const rows = csvParseRows(stepsCsv(runPicture(traceInput(plainInput({ gear })))));
  const bankW = rows[0]!.indexOf("bank_W");
  expect(Number(rows[1]![bankW])).toBeLessThan(-19);
});
