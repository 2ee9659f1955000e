import fc from "fast-check";
import { expect, test } from "vitest";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { traceInput } from "../truth/run/plainScenario.ts";
import { arbitraryScenario } from "./arbitraryScenario.ts";
import { withOnePanelMore } from "./withOnePanelMore.ts";
import { SLACK_SHARE, withoutSwitches } from "./withoutSwitches.ts";

const RUNS = { numRuns: 100, seed: 20261009 };

test("one panel group more never lowers the charge at any time", () => {
  fc.assert(
    fc.property(arbitraryScenario, fc.double({ min: 20, max: 300, noNaN: true }), (raw, ratedW) => {
      const input = withoutSwitches(raw);
      const more = withOnePanelMore(input, ratedW);
      const plain = traceInput(input);
      const before = plain.record.storedAh;
      const slackAh = SLACK_SHARE * plain.prepared.bank.fullAh;
      const after = traceInput(more).record.storedAh;
      before.forEach((ah, i) => {
        expect(after[i]!).toBeGreaterThan(ah - slackAh);
      });
    }),
    RUNS,
  );
});

test("more load never raises the charge at any time", () => {
  fc.assert(
    fc.property(arbitraryScenario, fc.double({ min: 1, max: 80, noNaN: true }), (raw, drawW) => {
      const input = withoutSwitches(raw);
      const more: ScenarioInput = {
        ...input,
        gear: [...(input.gear ?? []), { id: "more", name: "one more", working: { drawW }, use: { when: "always" } }],
      };
      const plain = traceInput(input);
      const before = plain.record.storedAh;
      const slackAh = SLACK_SHARE * plain.prepared.bank.fullAh;
      const after = traceInput(more).record.storedAh;
      before.forEach((ah, i) => {
        expect(after[i]!).toBeLessThan(ah + slackAh);
      });
    }),
    RUNS,
  );
});

test("a tree never brings light", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const open = traceInput({ ...input, obstacles: [] });
      const shaded = traceInput(input);
      open.details.forEach((detail, g) => {
        detail.planeWm2.forEach((light, i) => {
          expect(shaded.details[g]!.planeWm2[i]!).toBeLessThanOrEqual(light + 1e-3);
        });
      });
    }),
    RUNS,
  );
});
