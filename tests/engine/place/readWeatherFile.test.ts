import { expect, test } from "vitest";
import { readWeatherFile } from "../../../engine/place/readWeatherFile.ts";

// Layouts: TMY3, NREL/TP-581-43156 (2008); EPW, EnergyPlus "Auxiliary Programs". All numbers here are invented.
const tmy3Titles =
  "Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),GHI (W/m^2),GHI source,DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Wspd (m/s)";
const tmy3Place = '999999,"INVENTED FIELD",XX,-7.0,40.000,-105.000,1600';
const tmy3 = (...lines: string[]) => [tmy3Place, tmy3Titles, ...lines].join("\n");

const epwHead = [
  "LOCATION,Invented Field,XX,XXX,invented,999999,40.0,-105.0,-7.0,1600.0",
  "DESIGN CONDITIONS,0",
  "TYPICAL/EXTREME PERIODS,0",
  "GROUND TEMPERATURES,0",
  "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
  "COMMENTS 1,invented",
  "COMMENTS 2,invented",
  "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31",
];
const epwLine = (when: string, ghi: string, temp = "12.5", wind = "2.5") =>
  `${when},60,flags,${temp},5,60,84000,0,0,300,${ghi},500,80,0,0,0,0,180,${wind},5,5`;
const epw = (...lines: string[]) => [...epwHead, ...lines].join("\n");

const csv = (...lines: string[]) => ["# utcOffset: 1", "time,ghi", ...lines].join("\n");

function fileOf(text: string, name = "a.csv") {
  const reading = readWeatherFile(text, name);
  if (!reading.ok) throw new Error(reading.problems.map((problem) => problem.message).join("\n"));
  return reading.file;
}
function problemsOf(text: string, name = "a.csv") {
  const reading = readWeatherFile(text, name);
  return reading.ok ? [] : reading.problems;
}
const iso = (ms: number) => new Date(ms).toISOString();

test("TMY3: the hour ends at its stamp, in standard time", () => {
  const file = fileOf(
    tmy3("06/01/1998,11:00,1200,800,1,700,120,18.5,2.1", "06/01/1998,12:00,1250,850,1,720,130,19.5,2.2"),
  );
  expect(file.format).toBe("tmy3");
  expect(file.utcOffsetH).toBe(-7);
  expect([file.latitudeDeg, file.longitudeDeg, file.elevationM]).toEqual([40, -105, 1600]);
  expect(iso(file.startMs[0]!)).toBe("1998-06-01T17:00:00.000Z");
  expect([file.ghiWm2[1], file.dniWm2![1], file.dhiWm2![1], file.tempC![1], file.windMs![1]]).toEqual([
    850, 720, 130, 19.5, 2.2,
  ]);
  expect(file.typicalYear).toBe(false);
});

test("TMY3: months sewn together from different years are a typical year, not a gap", () => {
  const file = fileOf(tmy3("01/31/1995,24:00,0,0,1,0,0,1,1", "02/01/2003,01:00,0,0,1,0,0,1,1"));
  expect(file.typicalYear).toBe(true);
  expect(iso(file.startMs[0]!)).toBe("1995-02-01T06:00:00.000Z");
});

test("TMY3: a leap year's 29 February may be left out", () => {
  const file = fileOf(tmy3("02/28/2004,24:00,0,0,1,0,0,1,1", "03/01/2004,01:00,0,0,1,0,0,1,1"));
  expect(file.typicalYear).toBe(false);
});

test("TMY3: a column that is missing, and a missing value, are named", () => {
  expect(problemsOf([tmy3Place, tmy3Titles.replace("GHI (W/m^2)", "Glo (W/m^2)"), ""].join("\n"))).toMatchObject([
    { code: "missing-column", path: ["line", 2, "GHI (W/m^2)"] },
  ]);
  const [problem] = problemsOf(tmy3("06/01/1998,11:00,1200,-9900,1,700,120,18.5,2.1"));
  expect(problem).toMatchObject({ code: "missing-value", path: ["line", 3, "ghi"] });
  expect(problem!.message).toContain("-9900");
});

test("a missing value beside GHI costs its column, and a note says so", () => {
  const file = fileOf(tmy3("06/01/1998,11:00,1200,800,1,700,120,-9900,2.1"));
  expect(file.tempC).toBeNull();
  expect(file.notes).toEqual(["The file's temperature is missing on every line, so that column was left out."]);
});

test("EPW: the hour ends at its number, in standard time", () => {
  const file = fileOf(epw(epwLine("2001,6,1,11", "800"), epwLine("2001,6,1,12", "850")), "field.epw");
  expect(file.format).toBe("epw");
  expect(iso(file.startMs[0]!)).toBe("2001-06-01T17:00:00.000Z");
  expect([file.ghiWm2[1], file.dniWm2![1], file.dhiWm2![1], file.tempC![1], file.windMs![1]]).toEqual([
    850, 500, 80, 12.5, 2.5,
  ]);
});

test("EPW: header, cut lines, codes for missing values and half-hourly files are named", () => {
  expect(problemsOf("time,ghi\n2026-01-01T00:00Z,1", "x.epw")).toMatchObject([{ code: "bad-header" }]);
  expect(problemsOf(epw("2001,6,1,11,60,flags,12.5"))).toMatchObject([{ code: "truncated-line", path: ["line", 9] }]);
  expect(problemsOf(epw(epwLine("2001,6,1,11", "9999")))).toMatchObject([{ code: "missing-value" }]);
  expect(problemsOf(epw(epwLine("2001,6,31,11", "1")))).toMatchObject([{ code: "bad-time" }]);
  const halfHourly = epw(epwLine("2001,6,1,11", "1")).replace("DATA PERIODS,1,1", "DATA PERIODS,1,2");
  expect(problemsOf(halfHourly)).toMatchObject([{ code: "bad-header", path: ["line", 8] }]);
  expect(fileOf(epw(epwLine("2001,6,1,11", "1", "99.9", "999"))).notes).toHaveLength(2);
});

test("plain table: place, clock and columns, in any order", () => {
  const file = fileOf(
    "# latitude: 46.95\n# longitude: 7.45\n# elevation: 540\n# utcOffset: 1\n# made up\nwind_ms,time,GHI,colour\n2,2026-06-01T10:00,612,red\n2,2026-06-01T10:30,650,blue\n",
  );
  expect(file).toMatchObject({ format: "csv", latitudeDeg: 46.95, elevationM: 540, utcOffsetH: 1, stepMinutes: 30 });
  expect(iso(file.startMs[0]!)).toBe("2026-06-01T09:00:00.000Z");
  expect(file.dniWm2).toBeNull();
  expect(file.notes).toEqual(['The column "colour" is not used.']);
});

test("plain table: times may carry their own offset", () => {
  const file = fileOf("time,ghi\r\n2026-06-01T10:00+02:00,612\r\n2026-06-01T11:00+02:00,650\r\n");
  expect(iso(file.startMs[1]!)).toBe("2026-06-01T09:00:00.000Z");
  expect(file.utcOffsetH).toBe(2);
  expect(iso(fileOf("time,ghi\n2026-06-01T10:00-03:30,612").startMs[0]!)).toBe("2026-06-01T13:30:00.000Z");
});

test.each([
  ["an empty file", "\n \n", "empty-file"],
  ["titles and nothing else", "# utcOffset: 1\ntime,ghi\n", "empty-file"],
  ["remarks and nothing else", "# utcOffset: 1\n", "empty-file"],
  ["no column of light", "# utcOffset: 1\ntime,glob\n2026-06-01T10:00,1", "missing-column"],
  ["semicolons", "time;ghi\n2026-06-01T10:00;1", "missing-column"],
  ["a column named twice", "# utcOffset: 1\ntime,ghi,ghi\n2026-06-01T10:00,1,1", "duplicate-column"],
  ["a clock nobody explains", "time,ghi\n2026-06-01T10:00,1", "no-utc-offset"],
  ["an offset off the globe", "# utcOffset: 26\ntime,ghi\n2026-06-01T10:00,1", "bad-header"],
  ["a cut line", csv("2026-06-01T10:00"), "truncated-line"],
  ["a date that never was", csv("2026-02-30T10:00,1"), "bad-time"],
  ["words for numbers", csv("2026-06-01T10:00,bright"), "not-a-number"],
  ["negative light", csv("2026-06-01T10:00,-3"), "out-of-range"],
  ["more light than the sun has", csv("2026-06-01T10:00,1501"), "out-of-range"],
  ["a code for a missing value", csv("2026-06-01T10:00,9999"), "missing-value"],
  ["an empty cell", csv("2026-06-01T10:00,"), "missing-value"],
  ["an hour twice", csv("2026-06-01T10:00,1", "2026-06-01T11:00,1", "2026-06-01T11:00,1"), "duplicate-hour"],
  ["hours out of order", csv("2026-06-01T10:00,1", "2026-06-01T11:00,1", "2026-06-01T08:00,1"), "time-order"],
  ["odd steps", csv("2026-06-01T10:00,1", "2026-06-01T10:07,1", "2026-06-01T10:14,1"), "bad-step"],
])("plain table: %s is a problem", (_, text, code) => {
  const problems = problemsOf(text);
  expect(problems.map((problem) => problem.code)).toContain(code);
  for (const { message } of problems) expect(message).not.toMatch(/NaN|undefined|null/);
});

test("a gap says which hour is missing", () => {
  const [problem] = problemsOf(
    csv("2026-06-01T10:00,1", "2026-06-01T11:00,1", "2026-06-01T12:00,1", "2026-06-01T15:00,1"),
  );
  expect(problem).toMatchObject({ code: "time-gap", path: ["line", 6] });
  expect(problem!.message).toContain("2026-06-01 13:00 is missing");
});

test("all problems are listed, fifty at most, and the rest counted", () => {
  const few = problemsOf(csv("2026-06-01T10:00,x", "2026-06-01T11:00,-1", "2026-06-01T12:00,1", "2026-06-01T12:00,1"));
  expect(few.map((problem) => problem.code).sort()).toEqual(["duplicate-hour", "not-a-number", "out-of-range"]);
  const hours = Array.from(
    { length: 54 },
    (_, h) => `2026-06-0${1 + Math.floor(h / 24)}T${String(h % 24).padStart(2, "0")}:00,x`,
  );
  const many = problemsOf(csv(...hours));
  expect(many).toHaveLength(51);
  expect(many.at(-1)).toMatchObject({ code: "more-problems" });
  expect(many.at(-1)!.message).toContain("4 more");
});

test("a file over 10 MB is refused before it is read", () => {
  expect(problemsOf("x".repeat(10_000_001))).toMatchObject([{ code: "file-too-large" }]);
});
