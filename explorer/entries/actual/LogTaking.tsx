import { createSignal, For, Show } from "solid-js";
import type { KeptLog } from "../../../engine/answers/actual/doc.ts";
import type { MeterMapping } from "../../../engine/meter/meterMapping.ts";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { MappingTable } from "./MappingTable.tsx";
import { makeLogReader } from "./makeLogReader.ts";
import { rememberedMappings, rememberMapping } from "./rememberedMappings.ts";

/** What the reader reads at most; anything larger is not even loaded. */
const LARGEST_BYTES = 10_000_000;

/** "Set zone to UTC" */
function proposalWords(proposal: MeterMapping): string {
  const set = Object.entries(proposal).map(
    ([name, value]) => `${name} to ${JSON.stringify(value).replaceAll('"', "")}`,
  );
  return `Set ${set.join(", ")}`;
}

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
  const [isOver, setOver] = createSignal(false);
  const asked = (mapping: MeterMapping | null) => ({
    name: name(),
    mapping,
    remembered: rememberedMappings(props.notebook),
    document: props.document,
    takenAt: new Date().toISOString().slice(0, 16),
  });
  const open = async (file: File | undefined) => {
    if (file === undefined) return;
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
  const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") === true;
  return (
    <div class="log-taking no-print">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the same is done by the button for a file inside it */}
      <div
        class="log-drop"
        classList={{ "log-over": isOver() }}
        onDragOver={(event) => {
          if (!hasFile(event)) return;
          event.preventDefault();
          event.stopPropagation();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          if (!hasFile(event)) return;
          event.preventDefault();
          event.stopPropagation();
          setOver(false);
          void open(event.dataTransfer?.files[0]);
        }}
      >
        <label class="act file-label">
          {props.hasLog ? "Take another log" : "Choose a meter's log"}
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            aria-label={props.hasLog ? "Take another log" : "Choose a meter's log"}
            onChange={(event) => {
              void open(event.currentTarget.files?.[0]);
              event.currentTarget.value = "";
            }}
          />
        </label>
        <span class="log-hint">
          {props.hasLog
            ? "or drop it here."
            : "or drop it here: a table with titles over its columns (CSV). It stays on this machine; only the days of the event are kept, in this notebook."}
        </span>
      </div>
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
            <Show when={read().findings.length > 0}>
              <ul class="lines">
                <For each={read().findings}>
                  {({ message, proposal }) => (
                    <li>
                      {message}{" "}
                      <Show when={proposal}>
                        {(mapping) => (
                          <button type="button" class="act" onClick={() => propose(mapping())}>
                            {proposalWords(mapping())}
                          </button>
                        )}
                      </Show>
                    </li>
                  )}
                </For>
              </ul>
            </Show>
            <Show when={read().titles.length > 0}>
              <MappingTable read={read()} zone={props.zone} onMap={(mapping) => reader.order(asked(mapping))} />
            </Show>
          </section>
        )}
      </Show>
    </div>
  );
}
