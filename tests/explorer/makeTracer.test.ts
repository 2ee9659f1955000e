import { expect, test } from "vitest";
import { makeTracer, type Workshop } from "../../explorer/picture/makeTracer.ts";
import type { Delivery, Order } from "../../explorer/picture/traceWorker.ts";
import { type Plan, planOf } from "../../explorer/plan/plan.ts";
import { EXAMPLE } from "./exampleRun.ts";

const plan = (blockAh: number): Plan => ({ ...planOf(EXAMPLE), blockAh });

function workbench() {
  const orders: Order[] = [];
  const delivered: unknown[] = [];
  const workshop: Workshop = { postMessage: (order) => orders.push(order), onmessage: null, onerror: null };
  const tracer = makeTracer(workshop, EXAMPLE, (done) => delivered.push(done.blockAh));
  const finish = (order: Order) => {
    const data: Delivery = { number: order.number, ok: false, problems: [] };
    workshop.onmessage!({ data } as MessageEvent<Delivery>);
  };
  return { orders, delivered, tracer, finish, workshop };
}

test("one plan is in work, only the newest of the others waits, and the last one always arrives", () => {
  const { orders, delivered, tracer, finish } = workbench();
  for (const ah of [100, 110, 120, 130]) tracer.ask(plan(ah));
  expect(orders.map((order) => order.plan.blockAh)).toEqual([100]);
  finish(orders[0]!);
  expect(orders.map((order) => order.plan.blockAh)).toEqual([100, 130]);
  finish(orders[1]!);
  expect(delivered).toEqual([100, 130]);
  tracer.ask(plan(140));
  expect(orders).toHaveLength(3);
});

test("going back to the plan that is in work forgets the one that waited", () => {
  const { orders, tracer, finish } = workbench();
  tracer.ask(plan(100));
  tracer.ask(plan(110));
  tracer.ask(plan(100));
  finish(orders[0]!);
  expect(orders).toHaveLength(1);
});

test("a worker that dies is said in a sentence and not waited for", () => {
  const { delivered, orders, tracer, workshop } = workbench();
  tracer.ask(plan(100));
  workshop.onerror!({ message: "out of memory" } as ErrorEvent);
  tracer.ask(plan(110));
  expect(delivered).toEqual([100]);
  expect(orders).toHaveLength(2);
});
