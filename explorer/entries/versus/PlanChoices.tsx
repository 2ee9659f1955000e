import { Index, Show } from "solid-js";
import { FEWEST_COLUMNS, MOST_COLUMNS } from "../../../engine/answers/versus/ask.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";

/** Which scenarios stand in the table: the first is what the others are held against; a third and a fourth may be left out. */
export function PlanChoices(props: EntryProps<"versus">) {
  const set = (k: number, id: string | null) => {
    const scenarios = [...props.doc.scenarios];
    if (id === null) scenarios.splice(k, 1);
    else scenarios[k] = id;
    props.edit({ scenarios }, "scenarios");
  };
  const others = () => props.doc.scenarios.slice(1);
  return (
    <>
      <ScenarioChoice
        page={props.page}
        label="Scenario that the others are held against"
        value={props.doc.scenarios[0]!}
        onPick={(id) => set(0, id)}
      />
      <span>against</span>
      <Index each={others()}>
        {(id, k) => (
          <ScenarioChoice<string | null>
            page={props.page}
            label={`Scenario ${k + 2} of the table`}
            value={id()}
            {...(others().length >= FEWEST_COLUMNS ? { none: "leave out" } : {})}
            onPick={(picked) => set(k + 1, picked)}
          />
        )}
      </Index>
      <Show when={props.doc.scenarios.length < MOST_COLUMNS}>
        <ScenarioChoice<string | null>
          page={props.page}
          label="One more scenario in the table"
          value={null}
          none="one more"
          onPick={(id) => id !== null && set(props.doc.scenarios.length, id)}
        />
      </Show>
    </>
  );
}
