import { createSignal } from "solid-js";
import { showUnits, type UnitSystem } from "../../engine/words/displayUnits.ts";

const KEY = "duskline.units";

function remembered(): UnitSystem {
  try {
    return localStorage.getItem(KEY) === "imperial" ? "imperial" : "metric";
  } catch {
    return "metric"; // storage may be forbidden; the choice still holds for as long as the page is open
  }
}

const [units, setUnits] = createSignal<UnitSystem>(remembered());
showUnits(units);

/** Units that lengths, weights and temperatures are shown in; kept with the browser, for documents know one kind only. */
export const unitsShown = units;

export function chooseUnits(to: UnitSystem): void {
  setUnits(to);
  try {
    localStorage.setItem(KEY, to);
  } catch {
    // see above
  }
}
