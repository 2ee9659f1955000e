import { For } from "solid-js";
import { UNIT_SYSTEMS, type UnitSystem } from "../../engine/words/displayUnits.ts";
import { chooseUnits, unitsShown } from "./makeUnits.ts";

/** Which units lengths, weights and temperatures are shown in; volts, amperes and watts are the same everywhere. */
export function UnitsChoice() {
  return (
    <label>
      Shown in{" "}
      <select onChange={(event) => chooseUnits(event.currentTarget.value as UnitSystem)}>
        <For each={Object.entries(UNIT_SYSTEMS)}>
          {([system, words]) => (
            <option value={system} selected={unitsShown() === system}>
              {words}
            </option>
          )}
        </For>
      </select>
    </label>
  );
}
