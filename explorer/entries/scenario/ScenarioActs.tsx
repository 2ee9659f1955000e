import { createSignal } from "solid-js";
import { fileName, saveFile } from "../../download/saveFile.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { FileButton } from "../../parts/FileButton.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { LookChoice } from "./LookChoice.tsx";

/** Which scenario is shown, what it is called, and what can be done with it as a whole. */
export function ScenarioActs(props: EntryProps<"scenario">) {
  const scenario = () => props.page.scenario(props.doc.scenario);
  const [kept, setKept] = createSignal("");
  const remove = () => {
    const why = props.page.removeScenario(props.doc.scenario);
    setKept(why === null ? "" : `It stays: ${why.charAt(0).toLowerCase()}${why.slice(1)}`);
  };
  const save = () => {
    const name = scenario()?.name;
    const document = { ...props.page.document(props.doc.scenario), name };
    saveFile(`${fileName(name ?? "scenario")}.json`, "application/json", `${JSON.stringify(document, null, 2)}\n`);
  };
  return (
    <>
      <p class="choices no-print">
        <ScenarioChoice
          page={props.page}
          label="Scenario that is shown"
          value={props.doc.scenario}
          onPick={(other) => props.edit({ scenario: other }, "scenario")}
        />
        <label class="name-field">
          Name
          <input
            type="text"
            maxLength={120}
            value={scenario()?.name ?? ""}
            onChange={(event) => props.page.rename(props.doc.scenario, event.currentTarget.value)}
          />
        </label>
        <LookChoice page={props.page} scenario={props.doc.scenario} />
        <button type="button" class="act" onClick={() => props.page.branch(props.doc.scenario, props.id)}>
          Base another on it
        </button>
        <button type="button" class="act" onClick={save}>
          Scenario file
        </button>
        <FileButton
          words="Weather file"
          accept=".csv,.epw,.tm3,.tmy3"
          onFile={(file) => props.page.takeWeather(props.doc.scenario, file)}
        />
        <button type="button" class="act" onClick={remove}>
          Delete scenario
        </button>
      </p>
      <p role="status">{kept()}</p>
    </>
  );
}
