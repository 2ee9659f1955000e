import { createMemo, createSignal, createUniqueId, For, onCleanup, onMount, Show } from "solid-js";
import { gearChange } from "../../engine/gear/gearChange.ts";
import { GEAR_AT_V, type GenericGear } from "../../engine/gear/gearTable.ts";
import { nearGear, searchGear } from "../../engine/gear/searchGear.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { saveFile } from "../download/saveFile.ts";
import { FileButton } from "../parts/FileButton.tsx";
import { ownStore } from "../store/ownStore.ts";
import { GearRow } from "./GearRow.tsx";
import { OwnGearForm } from "./OwnGearForm.tsx";
import { measured } from "./ownMeasured.ts";
import "./gear.css";

/** Generic gear to look through, what one measured of it oneself, and a button that puts it into the scenario. */
export function GearShelf(props: {
  document: ScenarioInput;
  onChanges: (changes: readonly Change[], label: string) => void;
}) {
  const id = createUniqueId();
  const [query, setQuery] = createSignal("");
  const [said, setSaid] = createSignal("");
  const [isWriting, setWriting] = createSignal(false);
  const exact = createMemo(() => searchGear(query(), measured.own()));
  const near = createMemo(() => (exact().length > 0 ? [] : nearGear(query(), measured.own())));
  const fromOtherTab = (event: StorageEvent) => event.storageArea === ownStore() && measured.refresh();
  onMount(() => addEventListener("storage", fromOtherTab));
  onCleanup(() => removeEventListener("storage", fromOtherTab));
  const add = (gear: GenericGear) => {
    const taken = [...(props.document.gear ?? []), ...(props.document.stations ?? [])].map((each) => each.id);
    props.onChanges([gearChange(gear, measured.of(gear.id), taken)], `${gear.name} added`);
    setSaid(`${gear.name} is among the ${gear.radio === null ? "gear" : "stations"} now; Undo takes it back.`);
  };
  return (
    <section class="gear-shelf no-print" aria-label="Gear shelf">
      <p class="gear-acts">
        <label>
          Look for{" "}
          <input
            type="search"
            value={query()}
            placeholder="fridge, FM, network"
            onInput={(event) => setQuery(event.currentTarget.value)}
          />
        </label>
        <button type="button" class="act" aria-expanded={isWriting()} onClick={() => setWriting(!isWriting())}>
          A kind of your own
        </button>
        <FileButton
          words="Take measured figures in"
          accept=".json"
          onFile={async (file) => setSaid(measured.takeIn(await file.text()))}
        />
        <button
          type="button"
          class="act"
          disabled={measured.isEmpty()}
          onClick={() => saveFile("measured-gear.json", "application/json", measured.text())}
        >
          Save measured figures
        </button>
      </p>
      <Show when={isWriting()}>
        <OwnGearForm
          name={exact().length === 0 ? query() : ""}
          onKind={(kind) => {
            measured.addOwn(kind);
            setWriting(false);
            setQuery("");
            setSaid(`${kind.name} is on the shelf, in every notebook of this browser.`);
          }}
          onWrong={setSaid}
        />
      </Show>
      <p class="gear-says">
        Kinds of gear and what they usually take, across makes; amperes at {GEAR_AT_V} V. What you measure goes before
        it, in every notebook of this browser.
        <Show when={!measured.isKept()}> This browser keeps nothing: save the figures as a file.</Show>
      </p>
      <p role="status">{said()}</p>
      <Show when={near().length > 0}>
        <p class="gear-says">Nothing on the shelf answers to “{query()}”; near it:</p>
      </Show>
      <ul class="gear-list">
        <For
          each={exact().length > 0 ? exact() : near()}
          fallback={<li>Nothing on the shelf answers to that: write it down as a kind of your own.</li>}
        >
          {(gear) => <GearRow gear={gear} id={`${id}-${gear.id}`} onAdd={() => add(gear)} onSaid={setSaid} />}
        </For>
      </ul>
    </section>
  );
}
