import { createMemo, createSignal } from "solid-js";
import type { Scenario, ScenarioInput } from "../../engine/index.ts";
import { makeTracer, type Workshop } from "../picture/makeTracer.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import type { PlanProblem } from "../picture/traceWorker.ts";
import { makeHistory } from "../plan/makeHistory.ts";
import { type Plan, planOf, samePlan } from "../plan/plan.ts";

const KEPT_PICTURES = 40;

/** A plan worked out: its picture, and the scenario that the engine read. */
interface Worked {
  readonly picture: RunPicture;
  readonly scenario: Scenario;
}

/** The plan that is being edited, and the newest picture that was worked out for it. */
export function makePlanState(document: ScenarioInput, workshop: Workshop) {
  const base = planOf(document);
  const history = makeHistory(base);
  const pictures = new Map<string, Worked>();
  const [shown, setShown] = createSignal<(Worked & { plan: Plan }) | null>(null);
  const [refused, setRefused] = createSignal<{ plan: Plan; problems: readonly PlanProblem[] } | null>(null);

  function keep(plan: Plan, worked: Worked): void {
    pictures.set(JSON.stringify(plan), worked);
    const oldest = pictures.keys().next().value;
    if (pictures.size > KEPT_PICTURES && oldest !== undefined) pictures.delete(oldest);
  }

  const tracer = makeTracer(workshop, document, (plan, delivery) => {
    if (delivery.ok) {
      const worked = { picture: delivery.picture, scenario: delivery.scenario };
      keep(plan, worked);
      setShown({ plan, ...worked });
    } else {
      setRefused({ plan, problems: delivery.problems });
    }
  });

  function bring(plan: Plan): void {
    const known = pictures.get(JSON.stringify(plan));
    if (known === undefined) tracer.ask(plan);
    else setShown({ plan, ...known });
  }

  function edit(field: string, change: Partial<Plan>): void {
    const plan = { ...history.now(), ...change };
    if (samePlan(plan, history.now())) return;
    history.edit(field, plan);
    bring(plan);
  }

  bring(base);
  return {
    document,
    base,
    plan: history.now,
    edit,
    settle: history.settle,
    canUndo: history.canUndo,
    canRedo: history.canRedo,
    undo(): void {
      history.undo();
      bring(history.now());
    },
    redo(): void {
      history.redo();
      bring(history.now());
    },
    shown,
    /** The picture as it was before the last act, if it is known and differs. */
    before: createMemo((): RunPicture | null => {
      const plan = history.before();
      const now = shown();
      if (plan === null || now === null || samePlan(plan, now.plan)) return null;
      const picture = pictures.get(JSON.stringify(plan))?.picture ?? null;
      return picture === null || sameCharge(picture, now.picture) ? null : picture;
    }),
    isStale: createMemo(() => {
      const now = shown();
      return now === null || !samePlan(now.plan, history.now());
    }),
    problems: createMemo((): readonly PlanProblem[] => {
      const last = refused();
      return last !== null && samePlan(last.plan, history.now()) ? last.problems : [];
    }),
  };
}

/** Whether two runs have one and the same curve, as after a change of reserve. */
function sameCharge(a: RunPicture, b: RunPicture): boolean {
  return a.steps === b.steps && a.chargeShare.every((share, i) => share === b.chargeShare[i]);
}

export type PlanState = ReturnType<typeof makePlanState>;
