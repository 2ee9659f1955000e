import { createMemo, createSignal, createUniqueId, For, onCleanup, onMount, Show } from "solid-js";
import { gearChange } from "../../engine/gear/gearChange.ts";
import { GEAR_AT_V, type GearRange, type GenericGear } from "../../engine/gear/gearTable.ts";
import { searchGear } from "../../engine/gear/searchGear.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { THIN } from "../../engine/words/numbers.ts";
import { saveFile } from "../download/saveFile.ts";
import { FileButton } from "../parts/FileButton.tsx";
import { ownStore } from "../store/ownStore.ts";
import { typedNumber } from "../words/typedNumber.ts";
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
  const found = createMemo(() => searchGear(query()));
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
        <FileButton
          words="Take measured figures in"
          accept=".json"
          onFile={async (file) => setSaid(measured.takeIn(await file.text()))}
        />
        <button
          type="button"
          class="act"
          disabled={measured.measured().length === 0}
          onClick={() => saveFile("measured-gear.json", "application/json", measured.text())}
        >
          Save measured figures
        </button>
      </p>
      <p class="gear-says">
        Kinds of gear and what they usually take, across makes; amperes at {GEAR_AT_V} V. What you measure goes before
        it, in every notebook of this browser.
        <Show when={!measured.isKept()}> This browser keeps nothing: save the figures as a file.</Show>
      </p>
      <p role="status">{said()}</p>
      <ul class="gear-list">
        <For each={found()} fallback={<li>Nothing on the shelf answers to that.</li>}>
          {(gear) => (
            <li class="gear-row">
              <span class="gear-name" id={`${id}-${gear.id}`}>
                <strong>{gear.name}</strong>
                <span class="gear-source">{gear.source}</span>
              </span>
              <span class="gear-usual">
                <Show when={gear.idle}>
                  {(idle) => (
                    <span>
                      {gear.radio === null ? "idle" : "receiving"} {rangeWords(idle(), gear.unit)}
                    </span>
                  )}
                </Show>
                <span>
                  {gear.radio === null ? "at work" : "sending"} {rangeWords(gear.working, gear.unit)}
                </span>
              </span>
              <span class="gear-mine">
                <Show when={gear.idle}>
                  <MeasuredBox gear={gear} which="idle" onWrong={setSaid} />
                </Show>
                <MeasuredBox gear={gear} which="working" onWrong={setSaid} />
              </span>
              <button type="button" class="act" aria-label={`Add ${gear.name}`} onClick={() => add(gear)}>
                Add
              </button>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}

function rangeWords({ low, usual, high }: GearRange, unit: string): string {
  return `${usual}${THIN}${unit} (${low}–${high})`;
}

/** Most that a figure may be, W or A. */
const MOST = 5000;

function MeasuredBox(props: { gear: GenericGear; which: "idle" | "working"; onWrong: (sentence: string) => void }) {
  const when = () =>
    props.gear.radio === null
      ? props.which === "idle"
        ? "idle"
        : "at work"
      : props.which === "idle"
        ? "receiving"
        : "sending";
  const value = () => measured.of(props.gear.id)?.[props.which];
  const commit = (box: HTMLInputElement) => {
    const typed = box.value.trim() === "" ? null : typedNumber(box.value);
    if (typed !== null && !(typeof typed === "number" && typed >= 0 && typed <= MOST)) {
      props.onWrong(
        `${props.gear.name}, ${when()}: "${box.value}" should be a number of ${props.gear.unit} from 0 to ${MOST}, or nothing.`,
      );
      box.value = value() === undefined ? "" : String(value());
      return;
    }
    props.onWrong("");
    measured.write(props.gear.id, props.which, typed as number | null);
  };
  return (
    <label>
      <span class="gear-when">{when()}, measured</span>
      <input
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-label={`${props.gear.name}, ${when()}, measured by you, ${props.gear.unit}`}
        value={value() === undefined ? "" : String(value())}
        onChange={(event) => commit(event.currentTarget)}
      />{" "}
      {props.gear.unit}
    </label>
  );
}
