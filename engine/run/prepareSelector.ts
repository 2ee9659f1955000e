import type { Scenario } from "../scenario/scenario.ts";

/** Which inputs stand against one another; -1 where an input is free of the selector. */
export interface PreparedSelector {
  /** Number of inputs of which only the largest passes; 0 when all add up. */
  readonly inputs: number;
  readonly inputOfGroup: Int32Array;
  readonly inputOfSource: Int32Array;
}

/**
 * Numbers the selector's inputs. Without a list, an `either` selector stands between all panels together and each other
 * source, the usual wiring of a changeover switch.
 */
export function prepareSelector(scenario: Scenario): PreparedSelector {
  const { mode } = scenario.selector;
  const inputs = scenario.selector.inputs ?? ["solar", ...scenario.sources.map((source) => source.id)];
  const isEither = mode === "either" && inputs.length > 1;
  const numberOf = (id: string) => (isEither ? inputs.indexOf(id) : -1);
  const solar = numberOf("solar");
  return {
    inputs: isEither ? inputs.length : 0,
    inputOfGroup: Int32Array.from(scenario.panels, (group) => Math.max(numberOf(group.id), solar)),
    inputOfSource: Int32Array.from(scenario.sources, (source) => numberOf(source.id)),
  };
}
