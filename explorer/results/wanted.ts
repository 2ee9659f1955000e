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

/** Particles of a forecast that learns: fewer make its bands jump, more take longer than they are worth. */
const LEARN_MEMBERS = { fewest: 100, most: 2000 };

/** What an entry's readings want worked out; null while there are none. */
export function learnedWanted(document: ScenarioInput, { readings }: EntryDoc<"readings">, drawn: Drawn): Want | null {
  if (readings.length === 0) return null;
  const { seed } = drawn;
  const members = Math.min(LEARN_MEMBERS.most, Math.max(LEARN_MEMBERS.fewest, drawn.members));
  const key = JSON.stringify(["learned", seed, members, readings, document]);
  return { key, kind: "learned", document, readings, seed, members };
}

/** What an entry's log wants held against; null while there is none. */
export function actualWanted(document: ScenarioInput, { log }: EntryDoc<"actual">, { seed }: Drawn): Want | null {
  if (log === undefined) return null;
  return { key: JSON.stringify(["actual", seed, log, document]), kind: "actual", document, log, seed };
}
