import { expect, test } from "vitest";
import { accuracyWords, devicePosition } from "../../../explorer/place/devicePosition.ts";

const device = (answer: (ok: PositionCallback, no: PositionErrorCallback) => void) =>
  ({ getCurrentPosition: answer }) as unknown as Geolocation;

test("the device's position is taken with how exact it is", async () => {
  const found = await devicePosition(
    device((ok) => ok({ coords: { latitude: 47.2, longitude: 15.6, accuracy: 24 } } as GeolocationPosition)),
  );
  expect(found).toEqual({ ok: true, latitudeDeg: 47.2, longitudeDeg: 15.6, accuracyM: 24 });
  expect(accuracyWords(24)).toMatch(/about 24 m/);
  expect(accuracyWords(5400)).toMatch(/about 5 km/);
  expect(accuracyWords(80_000)).toMatch(/80 km only/);
  expect(accuracyWords(Number.NaN)).toMatch(/does not say/);
});

test.each([
  [1, /may not tell/],
  [2, /does not know/],
  [3, /within 20 seconds/],
  [9, /does not know/],
])("refusal %i is told in words, with what to do", async (code, words) => {
  const found = await devicePosition(device((_, no) => no({ code } as GeolocationPositionError)));
  expect(found.ok ? "" : found.why).toMatch(words);
  expect(found.ok ? "" : found.why).toMatch(/Search for a town/);
});

test("a browser without one, and a device that answers nonsense, are told in words", async () => {
  expect(await devicePosition(undefined)).toMatchObject({ ok: false });
  const odd = device((ok) =>
    ok({ coords: { latitude: Number.NaN, longitude: 0, accuracy: 1 } } as GeolocationPosition),
  );
  expect(await devicePosition(odd)).toMatchObject({ ok: false });
});
