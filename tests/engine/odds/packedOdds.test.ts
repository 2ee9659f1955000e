import fc from "fast-check";
import { expect, test } from "vitest";
import { runMembers } from "../../../engine/odds/odds.ts";
import { CHARGE_BINS, mergeOdds, POWER_BINS } from "../../../engine/odds/oddsPart.ts";
import { mergePackedOdds, packOdds } from "../../../engine/odds/packedOdds.ts";
import { bitsOf } from "../../bitsOf.ts";
import { oneEnsemble } from "../pool/oneEnsemble.ts";

const part = runMembers(oneEnsemble(), 3, 40);

test("a part that was packed is the part, and several are what they are merged", () => {
  expect(bitsOf(mergePackedOdds([packOdds(part)]))).toEqual(bitsOf(part));
  const parts = [runMembers(oneEnsemble(), 40, 55), part, runMembers(oneEnsemble(), 55, 56)];
  expect(bitsOf(mergePackedOdds(parts.map(packOdds)))).toEqual(bitsOf(runMembers(oneEnsemble(), 3, 56)));
  expect(bitsOf(mergeOdds(parts))).toEqual(bitsOf(runMembers(oneEnsemble(), 3, 56)));
});

test("whatever was counted, in whatever bins, comes out again; also counts beyond two bytes", () => {
  const rows = fc.array(
    fc.record({ row: fc.nat(part.steps - 1), bin: fc.nat(POWER_BINS - 1), count: fc.integer({ min: 1, max: 65_535 }) }),
    { maxLength: 60 },
  );
  fc.assert(
    fc.property(rows, fc.boolean(), (counted, isLarge) => {
      const members = isLarge ? 1_000_000 : 60_000;
      const solarCounts = new Uint32Array(part.solarCounts.length);
      const chargeCounts = new Uint32Array(part.chargeCounts.length);
      for (const { row, bin, count } of counted) {
        solarCounts[row * POWER_BINS + bin] = isLarge ? 15 * count : count;
        chargeCounts[(row + 1) * CHARGE_BINS + 4 * bin + 3] = isLarge ? 15 * count : count;
      }
      const outcomes = Object.fromEntries(Object.keys(part.outcomes).map((name) => [name, new Float64Array(members)]));
      const large = { ...part, from: 0, to: members, outcomes: outcomes as never, solarCounts, chargeCounts };
      const sent = packOdds(large);
      const whole = mergePackedOdds([sent]);
      expect(whole.solarCounts).toEqual(solarCounts);
      expect(whole.chargeCounts).toEqual(chargeCounts);
    }),
    { numRuns: 20 },
  );
});

test("packed, a part takes less than a third of its room", () => {
  const bytes = (counts: readonly ArrayBufferView[]) => counts.reduce((sum, each) => sum + each.byteLength, 0);
  const packed = packOdds(part);
  const long = bytes([part.chargeCounts, part.solarCounts, part.loadCounts]);
  expect(bytes([packed.charge, packed.solar, packed.load])).toBeLessThan(long / 3);
});

test("parts that do not follow one another are refused, packed or not, and so are parts of different ensembles", () => {
  const gap = runMembers(oneEnsemble(), 41, 42);
  const other = runMembers(oneEnsemble("4128"), 40, 41);
  for (const wrong of [gap, other]) {
    expect(() => mergePackedOdds([part, wrong].map(packOdds))).toThrow(RangeError);
    expect(() => mergePackedOdds([packOdds(wrong)], mergeOdds([part]))).toThrow(RangeError);
  }
  expect(() => mergePackedOdds([])).toThrow(RangeError);
});

test("a part that grows in its own memory is the merged one", () => {
  const before = mergeOdds([part]);
  const more = [runMembers(oneEnsemble(), 45, 50), runMembers(oneEnsemble(), 40, 45)].map(packOdds);
  const grown = mergePackedOdds(more, before);
  expect(bitsOf(grown)).toEqual(bitsOf(runMembers(oneEnsemble(), 3, 50)));
  expect(grown.chargeCounts).toBe(before.chargeCounts);
});
