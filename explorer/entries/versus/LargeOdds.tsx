import type { PlanColumn } from "../../../engine/answers/versus/planColumns.ts";
import { shortOdds } from "../../../engine/answers/versus/rows.ts";
import { oddsRange } from "../../../engine/words/oddsWords.ts";

/** How many of a hundred skies hold, in the scenario's colour, and what the sample leaves open. */
export function LargeOdds(props: { column: PlanColumn }) {
  return (
    <span class={`large-odds ink-${props.column.look}`}>
      <strong>{shortOdds(props.column.side.holds)}</strong> <span>{oddsRange(props.column.side.holds)}</span>
    </span>
  );
}
