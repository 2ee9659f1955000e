import type { ScenarioInput } from "../../engine/index.ts";
import { type Plan, samePlan } from "../plan/plan.ts";
import type { Delivery, Order } from "./traceWorker.ts";

/** The part of a Worker that is needed here. */
export interface Workshop {
  postMessage(order: Order): void;
  onmessage: ((event: MessageEvent<Delivery>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/**
 * Sends plans to a worker, one at a time: while one is in work only the newest of the others waits, so that a dragged
 * value keeps the picture moving and the last one always arrives.
 */
export function makeTracer(
  workshop: Workshop,
  document: ScenarioInput,
  deliver: (plan: Plan, delivery: Delivery) => void,
) {
  let inWork: Order | null = null;
  let waiting: Plan | null = null;
  let number = 0;

  function start(plan: Plan): void {
    number++;
    inWork = { number, document, plan };
    workshop.postMessage(inWork);
  }

  function finish(delivery: Delivery): void {
    if (inWork === null || delivery.number !== inWork.number) return;
    const { plan } = inWork;
    inWork = null;
    if (waiting !== null) start(waiting);
    waiting = null;
    deliver(plan, delivery);
  }

  workshop.onmessage = ({ data }) => finish(data);
  workshop.onerror = (event) => {
    const sentence = `The part of the page that does the working out has stopped (${event.message ?? "no reason given"}); load the page again.`;
    finish({ number, ok: false, problems: [{ place: null, sentence }] });
  };

  return {
    /** Asks for a plan to be worked out; an older one that still waits is forgotten. */
    ask(plan: Plan): void {
      if (inWork === null) start(plan);
      else waiting = samePlan(plan, inWork.plan) ? null : plan;
    },
  };
}
