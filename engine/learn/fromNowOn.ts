import { applyChanges } from "../scenario/applyChanges.ts";
import type { Change } from "../scenario/change.ts";
import type { Scenario } from "../scenario/scenario.ts";

const LISTS = ["gear", "stations", "panels", "sources"] as const;
type List = (typeof LISTS)[number];
type Thing = Scenario[List][number];

/** A value of the scenario as the JSON that a change holds. */
const json = (value: unknown) => JSON.parse(JSON.stringify(value)) as NonNullable<Change["add"]>;

/**
 * Changes of things on site as changes that keep the past: each thing stays as it was until a time, and stands beside itself, changed, from then on.
 * What a change leaves nothing of (none of it, nobody at it) only ends.
 * @param changes of fields of gear, stations, panels and sources
 * @param at local time from which they count
 * @param words how that time is told in names
 * @param fuelLeftL litres that a source still has then
 * @returns null where something else is changed, which cannot be from a time on
 */
export function fromNowOn(
  scenario: Scenario,
  changes: readonly Change[],
  at: string,
  words: string,
  fuelLeftL: (id: string) => number,
): Change[] | null {
  const changed = applyChanges(scenario, changes);
  if (!changed.ok) return null;
  const after = changed.document as Scenario;
  const touched = new Set<string>();
  for (const change of changes) {
    const [list, id, field] = change.at.split(".");
    if (!LISTS.some((each) => each === list) || id === undefined || field === undefined) return null;
    touched.add(`${list}.${id}`);
  }
  const taken = LISTS.flatMap((list) => scenario[list].map(({ id }) => id));
  const found: Change[] = [];
  const renamed = new Map<string, string>();
  for (const place of touched) {
    const [list, id] = place.split(".") as [List, string];
    const thing = (after[list] as readonly Thing[]).find((each) => each.id === id)!;
    found.push({ at: `${place}.until`, to: at });
    if (isNothing(thing)) continue;
    const copyId = freeId(id, taken);
    taken.push(copyId);
    renamed.set(id, copyId);
    const { until: _, ...rest } = thing;
    const copy = {
      ...rest,
      id: copyId,
      name: `${thing.name}, from ${words}`,
      from: at,
      ...ofItsKind(thing, fuelLeftL),
    };
    found.push({ at: list, add: json(copy) });
  }
  const { shedding } = scenario;
  if (shedding.some((id) => renamed.has(id)))
    found.push({ at: "shedding", to: shedding.flatMap((id) => (renamed.has(id) ? [id, renamed.get(id)!] : [id])) });
  return [...found, ...followers(scenario, renamed, touched, taken, at, words)];
}

/** What of a thing is not there twice: a generator's fuel, and the own draw of a controller that goes on beside itself. */
function ofItsKind(thing: Thing, fuelLeftL: (id: string) => number): object {
  if ("fuelL" in thing) return { fuelL: Math.min(thing.fuelL, fuelLeftL(thing.id)) };
  return "controller" in thing ? { controller: { ...thing.controller, ownDrawW: 0 } } : {};
}

const isNothing = (thing: Thing) =>
  ("count" in thing && thing.count === 0) ||
  ("staffed" in thing && thing.staffed.length === 0 && thing.whenUnstaffed === "off");

/** Gear that works while a certain station is staffed goes on with that station. */
function followers(
  { gear }: Scenario,
  renamed: ReadonlyMap<string, string>,
  touched: ReadonlySet<string>,
  taken: string[],
  at: string,
  words: string,
): Change[] {
  return gear.flatMap((thing): Change[] => {
    const station = thing.use.station === undefined ? undefined : renamed.get(thing.use.station);
    if (station === undefined || touched.has(`gear.${thing.id}`)) return [];
    const id = freeId(thing.id, taken);
    taken.push(id);
    const copy = { ...thing, id, name: `${thing.name}, from ${words}`, from: at, use: { ...thing.use, station } };
    return [
      { at: `gear.${thing.id}.until`, to: at },
      { at: "gear", add: json(copy) },
    ];
  });
}

function freeId(id: string, taken: readonly string[]): string {
  for (let n = 2; ; n++) {
    const free = `${id.slice(0, 36)}-${n}`;
    if (!taken.includes(free)) return free;
  }
}
