import { createSignal, For, Show } from "solid-js";
import type { KeptLog } from "../../../engine/answers/actual/doc.ts";
import type { MeterMapping } from "../../../engine/meter/meterMapping.ts";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { LogDrop } from "./LogDrop.tsx";
import { LogFindings } from "./LogFindings.tsx";
import { MappingTable } from "./MappingTable.tsx";
import { makeLogReader } from "./makeLogReader.ts";
import { rememberedMappings, rememberMapping } from "./rememberedMappings.ts";

/** What the reader reads at most; anything larger is not even loaded. */
const LARGEST_BYTES = 10_000_000;

/** Chooses or is dropped a meter's log, shows how it is read and what there is to say of it, and takes it. */
export function LogTaking(props: {
  notebook: Notebook;
  document: ScenarioInput;
  zone: string;
  /** Whether the entry has a log already. */
  hasLog: boolean;
  onTake: (log: KeptLog) => void;
}) {
  const reader = makeLogReader(() => new Worker(new URL("./logWorker.ts", import.meta.url), { type: "module" }));
  const [name, setName] = createSignal("");
  const asked = (mapping: MeterMapping | null) => ({
    name: name(),
    mapping,
    remembered: rememberedMappings(props.notebook),
    document: props.document,
    takenAt: new Date().toISOString().slice(0, 16),
  });
  const open = async (file: File) => {
    setName(file.name);
    if (file.size > LARGEST_BYTES) {
      const size = (file.size / 1e6).toFixed(0);
      return reader.refuse(
        `${file.name} has ${size} MB, and logs of at most 10 MB are read; cut it to the days of the event.`,
      );
    }
    try {
      reader.order({ ...asked(null), text: await file.text() });
    } catch (error) {
      reader.refuse(`${file.name} could not be opened: ${error instanceof Error ? error.message : String(error)}.`);
    }
  };
  const propose = (proposal: MeterMapping) => {
    const given = reader.read()?.given ?? {};
    reader.order(asked({ ...given, ...proposal, columns: { ...given.columns, ...proposal.columns } }));
  };
  const take = () => {
    const read = reader.read();
    if (read?.log == null) return;
    rememberMapping(read.titles, read.mapping);
    props.onTake(read.log);
    reader.close();
  };
  return (
    <div class="log-taking no-print">
      <LogDrop hasLog={props.hasLog} onFile={(file) => void open(file)} />
      <div role="status">
        <Show when={reader.isReading()}>
          <p>Reading {name()}…</p>
        </Show>
        <Show when={reader.fault()}>{(sentence) => <p class="wrong">{sentence()}</p>}</Show>
        <Show when={reader.read()}>
          {(read) => (
            <>
              <For each={read().wrong}>{(sentence) => <p class="wrong">{sentence}</p>}</For>
              <Show when={read().isRemembered}>
                <p>Read as the last log with these titles was.</p>
              </Show>
            </>
          )}
        </Show>
      </div>
      <Show when={reader.read()}>
        {(read) => (
          <section aria-label={`How ${name()} is read`}>
            <h3>{name()}</h3>
            <p class="acts-row">
              <button
                type="button"
                class="act log-take"
                disabled={read().log === null || reader.isReading()}
                onClick={take}
              >
                Hold it against the plan
              </button>
              <button type="button" class="act" onClick={() => reader.close()}>
                Put it away
              </button>
            </p>
            <LogFindings findings={read().findings} onPropose={propose} />
            <Show when={read().titles.length > 0}>
              <MappingTable read={read()} zone={props.zone} onMap={(mapping) => reader.order(asked(mapping))} />
            </Show>
          </section>
        )}
      </Show>
    </div>
  );
}
