import "../../zonesHere.ts";
import { type Change, type Difference, differences, readScenario, type ScenarioInput } from "../../../engine/index.ts";
import { differenceInUnits, inUnits } from "../../words/displayUnits.ts";
import { THIN } from "../../words/numbers.ts";
import { choiceLabel, fieldLabel } from "./fieldWords.ts";
import { type Path, pattern, valueAt } from "./formPath.ts";
import { schemaAt } from "./formSchema.ts";
import { itemInWords } from "./itemInWords.ts";
import { plainFigure, shownValue } from "./shownValue.ts";

type Part = Record<string, unknown>;

const part = (value: unknown): Part => (typeof value === "object" && value !== null ? (value as Part) : {});
const unit = (value: unknown, of: string) =>
  `${typeof value === "number" ? plainFigure(value) : String(value)}${THIN}${of}`;
const percent = (value: unknown) =>
  typeof value === "number" ? unit(Number((value * 100).toPrecision(6)), "%") : String(value);
const lower = (text: string) => (/^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);

/** Both documents, as written and filled in, so that a field left out still has a "was". */
interface Sides {
  readonly base: ScenarioInput;
  readonly document: ScenarioInput;
  readonly baseFilled: object;
  readonly filled: object;
}

/** One differing thing with its place in both documents. */
interface Found {
  /** Path by names, ids inside lists: ["panels", "roof", "count"]. */
  readonly names: readonly string[];
  readonly before: unknown;
  readonly after: unknown;
}

/**
 * What is different between a scenario and the one it is based on, in short plain lines: "2 folding panels added, in the
 * meadow, re-aimed at 07:30, 11:00, 14:30", "bank 280 → 560 Ah".
 * @param changes what was changed; they matter where the document does not show it, as for a name
 * @param document the scenario that results
 */
export function changesInWords(changes: readonly Change[], base: ScenarioInput, document: ScenarioInput): string[] {
  const read = (source: ScenarioInput): object => {
    const result = readScenario(source);
    return result.ok ? result.scenario : source;
  };
  const sides: Sides = { base, document, baseFilled: read(base), filled: read(document) };
  const found = differences(base, document).flatMap((difference) => spread(withUsual(difference, sides), sides));
  const real = found.filter(({ before, after }) => JSON.stringify(before) !== JSON.stringify(after));
  const lines: string[] = [];
  const told = new Set<Found>();
  for (const each of real) {
    if (told.has(each)) continue;
    const rule = RULES.find(({ at }) => at.test(each.names.join(".")));
    const together = rule?.together === undefined ? [each] : real.filter((other) => rule.together!(each, other));
    for (const other of together) told.add(other);
    const line = rule?.say(each, together, sides);
    lines.push(...(line === undefined ? together.map((other) => plainLine(other, sides)) : [line].flat()));
  }
  return [...lines.filter((line) => line !== ""), ...wordsOnly(changes, base, document)];
}

/** Names and notes change no watt, but somebody changed them. */
function wordsOnly(changes: readonly Change[], base: ScenarioInput, document: ScenarioInput): string[] {
  const touched = (key: string) => changes.some(({ at }) => at === key || at.startsWith(`${key}.`));
  const lines: string[] = [];
  if (touched("name") && base.name !== document.name) lines.push(`called “${document.name}”`);
  if (touched("note") && base.note !== document.note)
    lines.push(document.note === undefined ? "note taken out" : "note reworded");
  if (touched("variants")) lines.push("variants changed");
  return lines;
}

function withUsual({ at, before, after }: Difference, sides: Sides): Found {
  const names = at.split(".");
  return {
    names,
    before: before ?? byNames(sides.baseFilled, names),
    after: after ?? byNames(sides.filled, names),
  };
}

/** A part or list that one side leaves out, as the single fields that differ. */
function spread(found: Found, sides: Sides): Found[] {
  const { before, after, names } = found;
  const isNamed = (value: unknown) => Array.isArray(value) && value.every((item) => typeof part(item).id === "string");
  const isGroup = (value: unknown) => typeof value === "object" && value !== null && !Array.isArray(value);
  const lists = isNamed(before ?? []) && isNamed(after ?? []);
  if (!lists && !(isGroup(before) && isGroup(after))) return [found];
  const inner = differences({ of: before ?? [] }, { of: after ?? [] });
  return inner.map(({ at, ...each }) =>
    withUsual({ at: [...names, ...at.split(".").slice(1)].join("."), ...each }, sides),
  );
}

function byNames(document: unknown, names: readonly string[]): unknown {
  return names.reduce<unknown>((value, name) => {
    if (Array.isArray(value)) return value.find((item) => part(item).id === name) ?? value[Number(name)];
    return part(value)[name];
  }, document);
}

/** Names as a path with numbers inside lists, in a document that has the thing. */
function asPath(document: unknown, names: readonly string[]): Path {
  const path: (string | number)[] = [];
  for (const name of names) {
    const here = valueAt(document, path);
    if (!Array.isArray(here)) path.push(name);
    else {
      const index = here.findIndex((item) => part(item).id === name);
      path.push(index < 0 ? Number(name) : index);
    }
  }
  return path;
}

interface Rule {
  readonly at: RegExp;
  /** Which other differences are told in the same line. */
  together?(one: Found, other: Found): boolean;
  say(found: Found, together: readonly Found[], sides: Sides): string | string[] | undefined;
}

const under = (depth: number) => (one: Found, other: Found) =>
  one.names.slice(0, depth).every((name, i) => other.names[i] === name);
const itemName = ({ names }: Found, sides: Sides) => {
  const item = part(byNames(sides.document, names.slice(0, 2)) ?? byNames(sides.base, names.slice(0, 2)));
  return itemInWords(names[0]!, item).name;
};
const isWhole = ({ names }: Found) => names.length === 2;

/** A line for a whole thing that came or went; undefined when the thing itself stays. */
function cameOrWent(found: Found, came: (item: Part) => string, went: (item: Part) => string): string | undefined {
  if (!isWhole(found)) return undefined;
  if (found.before === undefined) return came(part(found.after));
  return found.after === undefined ? went(part(found.before)) : undefined;
}

/** "Folding panels in the meadow" and 2: "2 folding panels added, in the meadow". */
function panelsCame(item: Part): string {
  const count = Number(item.count);
  const [, thing, where] = /^(.*?)(?: ((?:in|on|at|by|under|behind|beside|near|along|over) .*))?$/.exec(
    String(item.name),
  )!;
  const mount = mountInWords(part(item.mount));
  const isPanel = /panels?$/i.test(thing!);
  const noun = count === 1 ? "panel" : "panels";
  const what = isPanel
    ? `${count} ${lower(thing!).replace(/panels?$/i, noun)} added`
    : `${count} ${noun} added, ${thing}`;
  return [what, ...(where === undefined ? [] : [where]), mount].join(", ");
}

function mountInWords(mount: Part): string {
  if (mount.kind === "aimed") return `re-aimed at ${shownValue(mount.aims, undefined)}`;
  if (mount.kind === "fixed") return `propped at ${unitless(mount.tiltDeg)}° facing ${unitless(mount.azimuthDeg)}°`;
  return "lying flat";
}

const unitless = (value: unknown) => (typeof value === "number" ? plainFigure(value) : String(value));

function moved(found: Found, together: readonly Found[]): string | undefined {
  const by = (key: string) => {
    const axis = together.find((other) => other.names.at(-1) === key);
    return axis === undefined ? 0 : Number(axis.after) - Number(axis.before);
  };
  const way = (metres: number, plus: string, minus: string) =>
    metres === 0 || Number.isNaN(metres)
      ? []
      : [`${differenceInUnits(Math.abs(metres), "m", 2)} ${metres > 0 ? plus : minus}`];
  const ways = [...way(by("eastM"), "east", "west"), ...way(by("northM"), "north", "south")];
  if (ways.length === 0 || found === undefined) return undefined;
  return `moved ${ways.join(" and ")}`;
}

const bankAh = (document: unknown) => {
  const bank = part(part(document).bank);
  return Number(bank.blockAh) * Number(bank.inParallel ?? 1);
};

const RULES: readonly Rule[] = [
  {
    at: /^panels\.[^.]+$/,
    say: (found) => cameOrWent(found, panelsCame, (item) => `${lower(String(item.name))} left at home`),
  },
  {
    at: /^panels\.[^.]+\.count$/,
    say: (found, _, sides) =>
      `${itemName(found, sides)}: ${unitless(found.after)} ${found.after === 1 ? "panel" : "panels"}, was ${unitless(found.before)}`,
  },
  {
    at: /^panels\.[^.]+\.mount/,
    together: under(3),
    say: (found, _, sides) => {
      const now = part(byNames(sides.document, found.names.slice(0, 3)));
      return `${itemName(found, sides)}: ${mountInWords(now)}`;
    },
  },
  {
    at: /^panels\.[^.]+\.module\./,
    together: under(3),
    say: (found, together, sides) => {
      const rated = together.find((other) => other.names.at(-1) === "ratedW");
      if (rated === undefined && together.length <= 2) return undefined;
      const size = rated === undefined ? "" : ` of ${unit(rated.after, "W")}, was ${unit(rated.before, "W")}`;
      return `${itemName(found, sides)}: other panels${size}`;
    },
  },
  {
    at: /^panels\.[^.]+\.at\.(eastM|northM)$/,
    together: (one, other) => under(3)(one, other) && /^(eastM|northM)$/.test(other.names.at(-1)!),
    say: (found, together, sides) => `${itemName(found, sides)} ${moved(found, together) ?? "moved"}`,
  },
  {
    at: /^panels\.[^.]+\.out/,
    together: under(3),
    say: (found, _, sides) => {
      const out = byNames(sides.document, found.names.slice(0, 3));
      return `${itemName(found, sides)}: ${out === undefined ? "always out" : `out ${shownValue(out, undefined)}`}`;
    },
  },
  {
    at: /^gear\.[^.]+$/,
    say: (found) =>
      cameOrWent(
        found,
        (item) => `${lower(String(item.name))} added, ${itemInWords("gear", item).says}`,
        (item) => `${lower(String(item.name))} left at home`,
      ),
  },
  {
    at: /^gear\.[^.]+\.count$/,
    say: (found, _, sides) => `${itemName(found, sides)}: ${unitless(found.after)}, was ${unitless(found.before)}`,
  },
  {
    at: /^gear\.[^.]+\.(working|idle)/,
    together: under(3),
    say: (found, _, sides) => drawLine(found, sides, found.names[2] === "idle" ? "idling at " : ""),
  },
  {
    at: /^gear\.[^.]+\.use/,
    together: under(3),
    say: (found, _, sides) => {
      const says = (document: unknown) =>
        itemInWords("gear", part(byNames(document, found.names.slice(0, 2)))).says.replace(/^[^,]*, /, "");
      return `${itemName(found, sides)}: ${says(sides.document)}, was ${says(sides.base)}`;
    },
  },
  {
    at: /^stations\.[^.]+$/,
    say: (found) =>
      cameOrWent(
        found,
        (item) => `${String(item.name)} added, ${itemInWords("stations", item).says}`,
        (item) => `${String(item.name)} stays at home`,
      ),
  },
  {
    at: /^stations\.[^.]+\.radio/,
    together: under(3),
    say: (found, together, sides) => {
      const rated = together.find((other) => other.names.at(-1) === "ratedW");
      if (rated !== undefined)
        return `${itemName(found, sides)}: a ${unit(rated.after, "W")} radio, was ${unit(rated.before, "W")}`;
      const draws = together.filter((other) => /^(receive|fullPower|bias)$/.test(other.names[3] ?? ""));
      if (draws.length !== together.length) return undefined;
      const kinds = [...new Set(draws.map((draw) => draw.names[3]!))];
      return kinds.map((kind) =>
        drawLine(
          { ...found, names: [...found.names.slice(0, 3), kind, ""] },
          sides,
          `${fieldLabel(kind).toLowerCase()} `,
          4,
        ),
      );
    },
  },
  {
    at: /^stations\.[^.]+\.transmitW$/,
    say: (found, _, sides) => `${itemName(found, sides)} at ${unit(found.after, "W")}, was ${unit(found.before, "W")}`,
  },
  {
    at: /^stations\.[^.]+\.sendingShare$/,
    say: (found, _, sides) =>
      `${itemName(found, sides)} sending ${percent(found.after)} of the time, was ${percent(found.before)}`,
  },
  {
    at: /^stations\.[^.]+\.(staffed|modes|activityByHour)/,
    together: under(3),
    say: (found, _, sides) => {
      const list = (document: unknown) => byNames(document, found.names.slice(0, 3));
      const key = found.names[2]!;
      const name = itemName(found, sides);
      if (key === "activityByHour") return `${name}: other busy hours`;
      const says = (document: unknown) => {
        const value = list(document);
        return key === "staffed" && Array.isArray(value) && value.length === 0 ? "never" : shownValue(value, undefined);
      };
      return `${name} ${key === "staffed" ? "staffed " : "in "}${says(sides.document)}, was ${says(sides.base)}`;
    },
  },
  {
    at: /^bank\./,
    together: under(1),
    say: (_, together, sides) => bankLines(together, sides),
  },
  {
    at: /^weather\./,
    together: under(1),
    say: (_, together, sides) => weatherLines(together, sides),
  },
  {
    at: /^time\.(start|end)$/,
    together: (_, other) => other.names[0] === "time" && other.names[1] !== "stepMinutes",
    say: (_, together, { document }) => {
      const shown = (local: string) => shownValue(local, undefined);
      if (together.length > 1) return `${shown(document.time.start)} to ${shown(document.time.end)}`;
      const [only] = together;
      return `${only!.names[1] === "start" ? "begins" : "ends"} ${shown(String(only!.after))}, was ${shown(String(only!.before))}`;
    },
  },
  {
    at: /^place\./,
    together: under(1),
    say: (_, together, { document }) => {
      const isMoved = together.some(({ names }) => /^(latitudeDeg|longitudeDeg)$/.test(names[1]!));
      return isMoved ? `at ${document.place.name}` : undefined;
    },
  },
  {
    at: /^obstacles\.[^.]+$/,
    say: (found) =>
      cameOrWent(
        found,
        (item) =>
          `${obstacleInWords(item)} added${item.heightM === undefined ? "" : `, ${inUnits(Number(item.heightM), "m", 2)} high`}`,
        (item) => `${obstacleInWords(item)} taken away`,
      ),
  },
  {
    at: /^obstacles\.[^.]+\.(eastM|northM)$/,
    together: (one, other) => under(2)(one, other) && /^(eastM|northM)$/.test(other.names.at(-1)!),
    say: (found, together, sides) => `${itemName(found, sides)} ${moved(found, together) ?? "moved"}`,
  },
  {
    at: /^obstacles\.[^.]+\.points/,
    together: under(2),
    say: (found, _, sides) => `${itemName(found, sides)}: another outline`,
  },
  {
    at: /^sources\.[^.]+$/,
    say: (found) =>
      cameOrWent(
        found,
        (item) => `${lower(String(item.name))} added, ${itemInWords("sources", item).says}`,
        (item) => `${lower(String(item.name))} left at home`,
      ),
  },
  {
    at: /^selector\.mode$/,
    say: ({ after }) => (after === "either" ? "only the larger input charges" : "all inputs charge together"),
  },
  {
    at: /^converter$/,
    say: ({ before, after }) =>
      before === undefined ? "converter to 12 V added" : after === undefined ? "converter left out" : undefined,
  },
  {
    at: /^shedding/,
    together: under(1),
    say: (_, __, { document }) => {
      const names = (document.shedding ?? []).map(
        (id) => [...(document.gear ?? []), ...(document.stations ?? [])].find((each) => each.id === id)?.name ?? id,
      );
      return names.length === 0 ? "nothing goes without" : `goes without first: ${names.map(lower).join(", ")}`;
    },
  },
  {
    at: /^knownDays/,
    together: under(1),
    say: (_, __, { document }) => {
      const days = (document.knownDays ?? []).map(
        (day) => `${shownValue(`${day.date}T00:00`, undefined).replace(" 00:00", "")} ${day.sky}`,
      );
      return days.length === 0 ? "no day's forecast known" : `forecast: ${days.join(", ")}`;
    },
  },
];

function drawLine(found: Found, sides: Sides, what: string, depth = 3): string {
  const draw = (document: object, raw: unknown) =>
    shownValue(byNames(raw, found.names.slice(0, depth)) ?? byNames(document, found.names.slice(0, depth)), undefined);
  return `${itemName(found, sides)}: ${what}${draw(sides.filled, sides.document)}, was ${draw(sides.baseFilled, sides.base)}`;
}

function obstacleInWords(item: Part): string {
  const kind = choiceLabel(item.kind);
  return typeof item.name === "string" ? lower(item.name) : kind;
}

/** Resistances and limits that grow with the number of blocks are no news beside it. */
const FOLLOWS_SIZE = /^(internalResistanceOhm|chargingResistanceOhm|maxChargeA|maxDischargeA|bring)$/;

function bankLines(together: readonly Found[], sides: Sides): string[] {
  const before = part(sides.baseFilled).bank as Part;
  const after = part(sides.filled).bank as Part;
  const lines: string[] = [];
  const kind =
    before.chemistry === after.chemistry
      ? ""
      : ` ${choiceLabel(after.chemistry)}, was ${choiceLabel(before.chemistry)}`;
  const size = bankAh(sides.filled) === bankAh(sides.baseFilled) ? "" : `${unit(bankAh(sides.filled), "Ah")}`;
  if (size !== "" && kind !== "")
    lines.push(`bank ${size}${kind.replace(/, was/, `, was ${unit(bankAh(sides.baseFilled), "Ah")}`)}`);
  else if (size !== "") lines.push(`bank ${plainFigure(bankAh(sides.baseFilled))} → ${size}`);
  else if (kind !== "") lines.push(`bank${kind}`);
  const isTold = (key: string) => /^(blockAh|inParallel|chemistry|name)$/.test(key);
  const follows = (key: string) => (size !== "" || kind !== "") && FOLLOWS_SIZE.test(key);
  for (const other of together) {
    const key = other.names[1]!;
    if (!isTold(key) && !follows(key)) lines.push(OWN_BANK[key]?.(other) ?? plainLine(other, sides));
  }
  return lines;
}

const OWN_BANK: Readonly<Record<string, (found: Found) => string>> = {
  reserveShare: ({ before, after }) => `reserve ${percent(after)}, was ${percent(before)}`,
  startShare: ({ before, after }) => `bank at ${percent(after)} to begin with, was ${percent(before)}`,
};

function weatherLines(together: readonly Found[], sides: Sides): string[] | undefined {
  const { weather } = sides.document;
  const isOther = together.some(({ names }) => names[1] === "kind" || names[1] === "days");
  const rest = together.filter(({ names }) => !/^(kind|days|file|maxDistanceKm)$/.test(names[1]!));
  const airs = rest.filter(({ names }) => names[1] === "air");
  const others = rest.filter(
    ({ names }) => names[1] !== "air" && names[1] !== "monthlyKt" && names[1] !== "monthlyGhiKwhM2",
  );
  const months = rest.filter(({ names }) => names[1]!.startsWith("monthly"));
  const sky =
    weather.kind === "words"
      ? `sky ${shownValue(weather.days, schemaAt(sides.document, ["weather", "days"]))}`
      : `sky ${choiceLabel(weather.kind, "weather.kind")}`;
  return [
    ...(isOther ? [sky] : []),
    ...(together.some(({ names }) => names[1] === "file")
      ? [`weather from ${weather.kind === "file" ? weather.file : "elsewhere"}`]
      : []),
    ...(airs.length > 0
      ? [weather.air === undefined ? "air as the climate has it" : `air ${shownValue(weather.air, undefined)}`]
      : []),
    ...(months.length > 0 ? ["own monthly figures of sun"] : []),
    ...others.map((other) => plainLine(other, sides)),
  ];
}

/** Any other field: what it belongs to, its name on the page, what it was and is. */
function plainLine(found: Found, sides: Sides): string {
  const holder = found.after === undefined ? sides.base : sides.document;
  const path = asPath(holder, found.names);
  const node = schemaAt(holder, path);
  const where = pattern(path);
  const isItem = found.names.length > 2 && Array.isArray(part(sides.document)[found.names[0]!]);
  const name = isItem ? `${itemName(found, sides)}: ` : "";
  const label = lower(fieldLabel(where));
  const says = (value: unknown) => shownValue(value, node, where);
  if (found.before === undefined) return `${name}${label} ${says(found.after)}`;
  if (found.after === undefined) return `${name}${label} as usual, was ${says(found.before)}`;
  return `${name}${label} ${says(found.after)}, was ${says(found.before)}`;
}
