import type { Scenario } from "../scenario/scenario.ts";

/** @throws TypeError if something is not a checked scenario, such as an answer whose `ok` nobody looked at */
export function requireScenario(scenario: Scenario, name = "scenario"): void {
  const given: unknown = scenario;
  const isChecked =
    typeof given === "object" && given !== null && "bank" in given && "stations" in given && "variants" in given;
  if (isChecked) return;
  const what = typeof given === "object" && given !== null ? `fields ${Object.keys(given).join(", ")}` : String(given);
  throw new TypeError(
    `${name} must be the scenario that readScenario gives, got ${what}; look at ok and problems of its result first.`,
  );
}
