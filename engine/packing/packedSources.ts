import type { Scenario } from "../scenario/scenario.ts";
import { Source } from "../scenario/source.ts";
import type { Written } from "./knownParts.ts";
import type { OwnedThing } from "./ownedThing.ts";

/** So many generators of one kind. */
export interface SourceOption {
  readonly count: number;
  readonly written: readonly Written[];
  readonly sources: readonly Source[];
}

/** An inverter generator of 1 kW, its charger let in when the bank is three tenths over its reserve (common practice, no source). */
const USUAL_W = 1000;
const OVER_RESERVE = 0.3;
const MOST_START = 0.9;
const STOP = 0.95;
const BURN_IDLE_L_PER_H_PER_KW = 0.3;
const BURN_FULL_L_PER_H_PER_KW = 1;
const USUAL_HOURS = { from: "08:00", to: "20:00" } as const;

/** Sources of one scenario, at most. */
const MOST_SOURCES = 10;

/** None of a kind of generator, one, two and so on. @param pattern the source that they stand for, as it is written */
export function sourceOptions(thing: OwnedThing, pattern: Written, taken: Set<string>): SourceOption[] {
  const options: SourceOption[] = [{ count: 0, written: [], sources: [] }];
  const written: Written[] = [];
  for (let count = 1; count <= Math.min(thing.count, MOST_SOURCES); count++) {
    let { id } = pattern;
    for (let n = 2; count > 1 && taken.has(id); n++) id = `${pattern.id}-${n}`.slice(-40);
    taken.add(id);
    written.push({ ...withFigures(pattern, thing), id });
    const read = written.map((each) => Source.safeParse(each));
    if (!read.every((each) => each.success)) break;
    options.push({ count, written: [...written], sources: read.map((each) => each.data!) });
  }
  return options;
}

/** A generator that no plan has. */
export function newGenerator(thing: OwnedThing, id: string, { bank }: Scenario): Written {
  const kW = (thing.continuousW ?? USUAL_W) / 1000;
  return {
    kind: "generator",
    id,
    name: thing.name,
    continuousW: 1000 * kW,
    allowed: [{ ...USUAL_HOURS }],
    startShare: Number(Math.min(MOST_START, bank.reserveShare + OVER_RESERVE).toFixed(3)),
    stopShare: STOP,
    burnIdleLPerH: Number((BURN_IDLE_L_PER_H_PER_KW * kW).toFixed(3)),
    burnFullLPerH: Number((BURN_FULL_L_PER_H_PER_KW * kW).toFixed(3)),
  };
}

/** What the list says of a generator goes before what the plan says. */
function withFigures(pattern: Written, { chargerA, fuelL, continuousW, from, to }: OwnedThing): Written {
  const hours =
    from === undefined && to === undefined
      ? {}
      : { allowed: [{ from: from ?? USUAL_HOURS.from, to: to ?? USUAL_HOURS.to }] };
  return { ...pattern, chargerA, fuelL, ...(continuousW === undefined ? {} : { continuousW }), ...hours };
}

/** The generator that a thing stands for: the one that it names, else one with its charger that no other thing stands for. */
export function sourcePatternOf(
  thing: OwnedThing,
  known: readonly Written[],
  isFree: (id: string) => boolean,
): Written | null {
  const generators = known.filter(({ kind, id }) => kind === "generator" && isFree(id));
  if (thing.as !== undefined) return generators.find(({ id }) => id === thing.as) ?? null;
  return generators.find(({ chargerA }) => chargerA === thing.chargerA) ?? null;
}
