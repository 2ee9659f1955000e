import { For, Show } from "solid-js";
import type { MeterMapping } from "../../../engine/meter/meterMapping.ts";
import type { LogRead } from "./readLog.ts";

/** What is odd about a log, a sentence each, with what would set it right where that is known. */
export function LogFindings(props: { findings: LogRead["findings"]; onPropose: (proposal: MeterMapping) => void }) {
  return (
    <Show when={props.findings.length > 0}>
      <ul class="lines">
        <For each={props.findings}>
          {({ message, proposal }) => (
            <li>
              {message}{" "}
              <Show when={proposal}>
                {(mapping) => (
                  <button type="button" class="act" onClick={() => props.onPropose(mapping())}>
                    {proposalWords(mapping())}
                  </button>
                )}
              </Show>
            </li>
          )}
        </For>
      </ul>
    </Show>
  );
}

/** "Set zone to UTC" */
function proposalWords(proposal: MeterMapping): string {
  const set = Object.entries(proposal).map(
    ([name, value]) => `${name} to ${JSON.stringify(value).replaceAll('"', "")}`,
  );
  return `Set ${set.join(", ")}`;
}
