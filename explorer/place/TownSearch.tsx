import { createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { findTowns, type Town } from "../../engine/towns/index.ts";
import { figure } from "../../engine/words/numbers.ts";
import { makeCombobox } from "./makeCombobox.ts";
import { ownTowns } from "./ownTowns.ts";
import { countryName, TOWNS_CREDIT, whereWords } from "./townWords.ts";
import "./place.css";

const MOST = 8;

/** A box in which a town's name is typed, and the towns that it may be. */
export function TownSearch(props: { onPick: (town: Town) => void }) {
  const id = createUniqueId();
  const [typed, setTyped] = createSignal("");
  const found = createMemo(() =>
    typed().trim() === "" ? [] : findTowns(ownTowns.towns(), typed(), MOST, countryName),
  );
  const box = makeCombobox(found, (town) => {
    setTyped(town.name);
    props.onPick(town);
  });
  const says = () => {
    const state = ownTowns.state();
    if (state === "coming") return "The towns are on their way …";
    if (state === "failed") return "The towns could not be fetched. Type again to try once more, or use the map.";
    if (typed().trim() === "" || state !== "here") return "";
    if (found().length > 0) return `${found().length} proposed`;
    return `None of ${figure(ownTowns.towns().length)} towns is called so. Try a larger one near by, or use the map.`;
  };
  const isBad = () => ownTowns.state() === "failed" || (ownTowns.state() === "here" && found().length === 0);
  return (
    <Show when={ownTowns.state() !== "left out"} fallback={<LeftOut />}>
      <div class="town-search">
        <label class="start-label" for={id}>
          Nearest town
        </label>
        <span class="town-box">
          <input
            id={id}
            class="box"
            type="text"
            role="combobox"
            aria-expanded={box.shown()}
            aria-controls={`${id}-list`}
            aria-autocomplete="list"
            aria-activedescendant={box.shown() && box.active() >= 0 ? `${id}-${box.active()}` : undefined}
            aria-describedby={`${id}-says`}
            autocomplete="off"
            spellcheck={false}
            maxlength={100}
            placeholder="Innsbruck, or Springfield, Illinois"
            value={typed()}
            onFocus={() => ownTowns.ask()}
            onInput={(event) => {
              setTyped(event.currentTarget.value);
              ownTowns.ask();
              box.setOpen(true);
            }}
            onBlur={() => box.setOpen(false)}
            onKeyDown={box.onKeyDown}
          />
          <div id={`${id}-list`} role="listbox" aria-label="Towns" class="town-list" hidden={!box.shown()}>
            <For each={found()}>
              {(town, n) => (
                // biome-ignore lint/a11y/useKeyWithClickEvents: the box above has the keys, by the combobox pattern
                // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the box (aria-activedescendant)
                <div
                  id={`${id}-${n()}`}
                  role="option"
                  aria-selected={box.active() === n()}
                  onMouseDown={(event) => event.preventDefault()}
                  onClick={() => box.take(town)}
                >
                  <b>{town.name}</b> <span>{whereWords(town)}</span>
                </div>
              )}
            </For>
          </div>
        </span>
        <p
          id={`${id}-says`}
          class="town-says"
          classList={{ unseen: !isBad() && ownTowns.state() !== "coming" }}
          aria-live="polite"
        >
          {says()}
        </p>
        <p class="town-credit">{TOWNS_CREDIT}</p>
      </div>
    </Show>
  );
}

function LeftOut() {
  return (
    <p class="town-says">
      The search by town is left out of the page that is one file, to keep it small. Use the map, or type the position.
    </p>
  );
}
