import { expect, test } from "vitest";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { makeSunlight, type SunWorkshop } from "../../../explorer/entries/shade/makeSunlight.ts";
import type { SunlightOrder } from "../../../explorer/entries/shade/sunlightWorker.ts";

test("one site is in work, only the newest waits, and the last one always arrives", () => {
  const orders: SunlightOrder[] = [];
  const workshop: SunWorkshop = { postMessage: (order) => void orders.push(order), onmessage: null };
  const arrived: unknown[] = [];
  const sun = makeSunlight(workshop, (scenario) => void arrived.push(scenario));
  const site = (name: string) => ({ name }) as unknown as Scenario;
  const [a, b, c] = [site("a"), site("b"), site("c")];
  for (const each of [a, b, c]) sun.ask(each);
  expect(orders).toHaveLength(1);
  const answer = (number: number) =>
    workshop.onmessage!({ data: { number, light: null } } as Parameters<NonNullable<SunWorkshop["onmessage"]>>[0]);
  answer(1);
  expect(orders[1]!.scenario).toBe(c);
  answer(1); // an answer that was overtaken
  answer(2);
  expect(arrived).toEqual([a, c]);
  sun.ask(a);
  expect(orders).toHaveLength(3);
});
