import { clockMsOf } from "../zoneTime.ts";
import type { Problem } from "./problem.ts";
import type { Scenario } from "./scenario.ts";

/** Times that are none, and things that go before they come. */
export function strangePresence(scenario: Scenario): Problem[] {
  return (["gear", "stations", "panels", "sources"] as const).flatMap((list) =>
    scenario[list].flatMap((thing, index) => {
      const problems: Problem[] = (["from", "until"] as const).flatMap((field): Problem[] => {
        const local = thing[field];
        if (local === undefined || clockMsOf(local) !== null) return [];
        const message = `${list}.${thing.id}.${field} is "${local}", which is no date of the calendar; write it as "2026-10-10T18:00".`;
        return [{ code: "no-such-date", path: [list, index, field], message }];
      });
      const { from, until } = thing;
      if (problems.length > 0 || from === undefined || until === undefined || from < until) return problems;
      const message = `${list}.${thing.id}.until is "${until}", which is not after its from "${from}"; swap them or leave one out.`;
      return [{ code: "until-before-from", path: [list, index, "until"], message }];
    }),
  );
}
