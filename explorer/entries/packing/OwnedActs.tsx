import { createSignal, For, Show } from "solid-js";
import { ownedCsv, readOwnedCsv } from "../../../engine/packing/ownedCsv.ts";
import type { OwnedKind, OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { fileName, saveFile } from "../../download/saveFile.ts";
import { FileButton } from "../../parts/FileButton.tsx";
import { ownedShelf } from "./ownedShelf.ts";

/** What can be done with the whole list: a thing added, a file read or written, the shelf that all notebooks share. */
export function OwnedActs(props: {
  things: readonly OwnedThing[];
  isOwn: boolean;
  name: string;
  kinds: readonly OwnedKind[];
  onAdd: (kind: OwnedKind) => void;
  /** @returns why the list stays as it was, or null */
  onTake: (things: readonly OwnedThing[]) => string | null;
}) {
  const [said, setSaid] = createSignal<readonly string[]>([]);
  const [isWrong, setWrong] = createSignal(false);
  const say = (wrong: boolean, ...sentences: string[]) => {
    setWrong(wrong);
    setSaid(sentences);
  };
  const take = (things: readonly OwnedThing[], from: string, more: readonly string[] = []) => {
    const why = props.onTake(things);
    if (why !== null) return say(true, why);
    say(false, `${things.length} things from ${from} are the list now; Undo takes that back.`, ...more);
  };
  const read = async (file: File) => {
    const found = readOwnedCsv(await file.text());
    if (!found.ok) return say(true, ...found.sentences, "The list stays as it was.");
    const { things, passedOver } = found;
    const more = passedOver.length === 0 ? [] : [`Columns that nothing here knows: ${passedOver.join(", ")}.`];
    take(things, file.name, more);
  };
  const keep = () => {
    const isKept = ownedShelf.write(props.things);
    say(
      !isKept,
      isKept
        ? "The list is on the shelf, for every notebook of this browser."
        : "This browser keeps nothing: save the list as CSV.",
    );
  };
  const fetch = () => {
    const things = ownedShelf.read();
    if (things === null) return say(true, "There is no list on the shelf yet.");
    take(things, "the shelf");
  };
  return (
    <div class="packing-acts no-print">
      <Show when={!props.isOwn}>
        <p class="packing-note">
          This is what the scenarios hold, taken to be at hand. Change anything, and it is a list of your own.
        </p>
      </Show>
      <p class="acts-row">
        <Show when={props.kinds.length > 0}>
          <label class="name-field">
            Add a thing
            <select
              onChange={(event) => {
                const { value } = event.currentTarget;
                event.currentTarget.value = "";
                if (value !== "") props.onAdd(value as OwnedKind);
              }}
            >
              <option value="">choose</option>
              <For each={props.kinds}>{(kind) => <option value={kind}>{kind}</option>}</For>
            </select>
          </label>
        </Show>
        <FileButton words="Read CSV" accept=".csv,text/csv" onFile={(file) => void read(file)} />
        <button
          type="button"
          class="act"
          onClick={() => saveFile(`${fileName(props.name)}-owned.csv`, "text/csv", ownedCsv(props.things))}
        >
          Save the list as CSV
        </button>
        <button type="button" class="act" onClick={keep}>
          Put the list on the shelf
        </button>
        <button type="button" class="act" onClick={fetch}>
          Take it from the shelf
        </button>
      </p>
      <div role="status" classList={{ wrong: isWrong() }}>
        <For each={said()}>{(sentence) => <p>{sentence}</p>}</For>
      </div>
    </div>
  );
}
