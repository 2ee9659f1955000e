import type { ScenarioInput } from "../../engine/index.ts";
import { limitOptions } from "../entries/limits/limitsWords.ts";
import type { EntryDoc, Notebook } from "../notebook/notebook.ts";
import type { Want } from "./desk.ts";

/** Members of a map and rows of drivers: they run every member many times over, and settle with fewer. */
const MOST_MAP_MEMBERS = 500;
const MOST_DRIVERS_ROWS = 300;

type Drawn = Pick<Notebook, "seed" | "members">;

/** What an entry's map wants worked out. */
export function sizesWanted(document: ScenarioInput, doc: EntryDoc<"sizing">, drawn: Drawn): Want {
  const { seed } = drawn;
  const members = Math.min(MOST_MAP_MEMBERS, drawn.members);
  const aims = { targetShare: doc.targetIn100 / 100, autonomyDays: doc.autonomyDays };
  return {
    key: JSON.stringify(["sizes", seed, members, doc.across, doc.up, aims, document]),
    kind: "sizes",
    document,
    ...(doc.across === undefined ? {} : { x: doc.across }),
    ...(doc.up === undefined ? {} : { y: doc.up }),
    aims,
    seed,
    members,
  };
}

/** What it takes to say what a scenario's outcome hangs on. */
export function driversWanted(document: ScenarioInput, drawn: Drawn): Want {
  const { seed } = drawn;
  const members = Math.min(MOST_DRIVERS_ROWS, drawn.members);
  return { key: JSON.stringify(["drivers", seed, members, document]), kind: "drivers", document, seed, members };
}

/** What an entry holds a plan's wiring against. */
export function limitsWanted(document: ScenarioInput, doc: EntryDoc<"limits">): Want {
  const options = limitOptions(doc);
  return { key: JSON.stringify(["limits", options, document]), kind: "limits", document, options };
}
