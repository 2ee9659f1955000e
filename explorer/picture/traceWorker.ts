/** Works a plan out away from the page, so that nothing ever waits for it. */
import "../noEval.ts";
import {
  applyChanges,
  loadClimateTables,
  type Problem,
  readScenario,
  type Scenario,
  type ScenarioInput,
  trace,
} from "../../engine/index.ts";
import { changesOf, type Plan } from "../plan/plan.ts";
import { problemPlace, problemSentence } from "../plan/problemPlace.ts";
import { buffersOf, type RunPicture, runPicture } from "./runPicture.ts";

export interface Order {
  readonly number: number;
  readonly document: ScenarioInput;
  readonly plan: Plan;
}

/** What is wrong with a plan, and at which field; null when it is at none of the page's. */
export interface PlanProblem {
  readonly place: string | null;
  readonly sentence: string;
}

export type Delivery = { readonly number: number } & (
  | { readonly ok: true; readonly picture: RunPicture; readonly scenario: Scenario }
  | { readonly ok: false; readonly problems: readonly PlanProblem[] }
);

async function deliver({ number, document, plan }: Order): Promise<Delivery> {
  const changed = applyChanges(document, changesOf(document, plan));
  if (!changed.ok) return refusal(number, changed.problems, document);
  const read = readScenario(changed.document);
  if (!read.ok) return refusal(number, read.problems, changed.document as ScenarioInput);
  const run = trace(read.scenario, { climate: await loadClimateTables() });
  if (!run.ok) return refusal(number, run.problems, changed.document as ScenarioInput);
  return { number, ok: true, picture: runPicture(run.trace), scenario: read.scenario };
}

function refusal(number: number, problems: readonly Problem[], document: ScenarioInput): Delivery {
  return {
    number,
    ok: false,
    problems: problems.map((problem) => ({
      place: problemPlace(problem, document),
      sentence: problemSentence(problem.message),
    })),
  };
}

self.onmessage = async ({ data }: MessageEvent<Order>) => {
  let delivery: Delivery;
  try {
    delivery = await deliver(data);
  } catch (error) {
    const sentence = `This could not be worked out: ${error instanceof Error ? error.message : String(error)}`;
    delivery = { number: data.number, ok: false, problems: [{ place: null, sentence }] };
  }
  self.postMessage(delivery, { transfer: delivery.ok ? buffersOf(delivery.picture) : [] });
};
