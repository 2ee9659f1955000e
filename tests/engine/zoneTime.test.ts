import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { clockMoments, clockMsOf, isZone, zoneOffsetMs, zoneOffsets } from "../../engine/zoneTime.ts";

// The polyfill of the language's own Temporal is a second implementation, of the standard's rules for times that are skipped or come twice.

const zones = Intl.supportedValuesOf("timeZone");
const FROM = Date.UTC(2024, 0, 1);
const TO = Date.UTC(2028, 0, 1);
const DAYS_60_MS = 60 * 86_400_000;

function theirs(zone: string, clockMs: number) {
  const plain = Temporal.Instant.fromEpochMilliseconds(clockMs).toZonedDateTimeISO("UTC").toPlainDateTime();
  const at = (disambiguation: "earlier" | "later") => plain.toZonedDateTime(zone, { disambiguation });
  const [first, last] = [at("earlier"), at("later")];
  const isSkipped = Temporal.PlainDateTime.compare(first.toPlainDateTime(), plain) !== 0;
  return { firstMs: first.epochMilliseconds, lastMs: last.epochMilliseconds, isSkipped };
}

test("every zone changes its clocks when Temporal says, to the millisecond", () => {
  let changes = 0;
  for (const zone of zones) {
    const ours = zoneOffsets(zone, FROM, TO);
    let moment = Temporal.Instant.fromEpochMilliseconds(FROM).toZonedDateTimeISO(zone);
    const found = [{ fromMs: FROM, offsetMs: moment.offsetNanoseconds / 1e6 }];
    for (;;) {
      const next = moment.getTimeZoneTransition("next");
      if (next === null || next.epochMilliseconds >= TO) break;
      found.push({ fromMs: next.epochMilliseconds, offsetMs: next.offsetNanoseconds / 1e6 });
      moment = next;
    }
    expect([zone, ours]).toEqual([zone, found]);
    changes += found.length - 1;
  }
  expect(changes).toBeGreaterThan(800);
});

test("round every change of clocks, and elsewhere, local times mean the instants that Temporal says", () => {
  let [skipped, twice] = [0, 0];
  for (const [k, zone] of zones.entries()) {
    const shown = zoneOffsets(zone, FROM, FROM + 4 * DAYS_60_MS).flatMap(({ fromMs, offsetMs }) =>
      [-5_400_001, -3_600_000, -1_800_000, -1, 0, 1, 900_000, 3_599_999, 3_600_000].map((ms) => fromMs + offsetMs + ms),
    );
    const anywhere = Array.from(
      { length: 6 },
      (_, n) => FROM + Math.floor((((k * 7 + n) * 0.618034) % 1) * (TO - FROM)),
    );
    for (const clockMs of [...shown, ...anywhere]) {
      const ours = clockMoments(zone, clockMs);
      expect([zone, clockMs, ours]).toEqual([zone, clockMs, theirs(zone, clockMs)]);
      if (ours.isSkipped) skipped++;
      else if (ours.lastMs > ours.firstMs) twice++;
    }
  }
  expect(skipped).toBeGreaterThan(100);
  expect(twice).toBeGreaterThan(20);
});

test("seconds of a zone's offset before there were whole hours, years before 100, fractions and the ends of months", () => {
  for (const [zone, ms] of [
    ["Europe/Amsterdam", Date.UTC(1930, 5, 1)],
    ["Africa/Monrovia", Date.UTC(1960, 0, 31, 23, 59, 59)],
    ["Asia/Kathmandu", Date.UTC(2026, 1, 28, 20)],
    ["Pacific/Kiritimati", Date.UTC(2026, 11, 31, 12)],
    ["America/Anchorage", Date.UTC(2024, 2, 1, 3)],
    ["Europe/Vienna", -62_000_000_000_000],
    ["Pacific/Apia", Date.UTC(2011, 11, 30, 9, 59, 59)],
    ["America/Denver", -1.5],
  ] as const) {
    const at = Temporal.Instant.fromEpochMilliseconds(Math.floor(ms)).toZonedDateTimeISO(zone);
    expect([zone, zoneOffsetMs(zone, ms)]).toEqual([zone, at.offsetNanoseconds / 1e6]);
  }
});

test("an offset is a zone that never changes; what is neither is refused", () => {
  expect(zoneOffsetMs("+01:00", 0)).toBe(3_600_000);
  expect(zoneOffsetMs("-0330", 0)).toBe(-12_600_000);
  expect(zoneOffsetMs("+14", 0)).toBe(50_400_000);
  for (const zone of ["+25:00", "Mars/Olympus", "", "+1:00"]) expect([zone, isZone(zone)]).toEqual([zone, false]);
  expect(() => zoneOffsetMs("Mars/Olympus", 0)).toThrow(RangeError);
});

test.each([
  ["2026-10-08T10:00", Date.UTC(2026, 9, 8, 10)],
  ["2026-10-08 10:00:30", Date.UTC(2026, 9, 8, 10, 0, 30)],
  ["2024-02-29", Date.UTC(2024, 1, 29)],
  ["0050-03-01T00:00", Temporal.PlainDateTime.from("0050-03-01T00:00").toZonedDateTime("UTC").epochMilliseconds],
  ["2026-02-29T10:00", null],
  ["2026-13-01T10:00", null],
  ["2026-00-10T10:00", null],
  ["2026-10-08T24:00", null],
  ["2026-10-08T10:60", null],
  ["26-10-08T10:00", null],
  ["tomorrow", null],
])("%s on the clock", (text, clockMs) => {
  expect(clockMsOf(text)).toBe(clockMs);
});
