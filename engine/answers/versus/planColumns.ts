import type { Look } from "../../words/look.ts";
import { type AnswersPage, nameOf } from "../answersPage.ts";
import { pairsOf, type VersusDoc } from "./ask.ts";
import type { Side, VersusPicture } from "./versusPicture.ts";

/** One scenario of a decision table. */
export interface PlanColumn {
  readonly id: string;
  readonly name: string;
  readonly look: Look;
  readonly side: Side;
  /** Held against the first; null for the first itself. */
  readonly pair: VersusPicture | null;
}

/** The first scenario and those of the others that are known by now; none before one of these is. */
export function planColumns(page: Pick<AnswersPage, "find" | "look" | "scenario">, doc: VersusDoc): PlanColumn[] {
  const named = (id: string) => ({ id, name: nameOf(page, id), look: page.look(id) });
  const [first, ...ids] = doc.scenarios;
  const pairs = pairsOf(page, doc).map(({ result }) => result);
  const others = ids.flatMap((id, k): PlanColumn[] => {
    const pair = pairs[k]!;
    return pair === null ? [] : [{ ...named(id), side: pair.second, pair }];
  });
  const [one] = others;
  return one === undefined ? [] : [{ ...named(first!), side: one.pair!.first, pair: null }, ...others];
}
