import type { Problem } from "../scenario/problem.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import { figure, THIN } from "../words/numbers.ts";
import { choiceLabel } from "./fieldWords.ts";
import { formSchema } from "./formSchema.ts";
import { dayInWords, plainFigure } from "./shownValue.ts";

/** One group of the form: which fields of the document it holds, and what it says in a line. */
export interface FormGroup {
  readonly name: string;
  readonly keys: readonly string[];
  summary(document: ScenarioInput): string;
}

const count = (n: number, one: string, many = `${one}s`) => (n === 0 ? `no ${many}` : `${n} ${n === 1 ? one : many}`);

function whenInWords({ time }: ScenarioInput): string {
  const end = (local: string) => `${dayInWords(local.slice(0, 10)).replace(/ \w+$/, "")} ${local.slice(11)}`;
  return `${end(time.start)} to ${end(time.end)}`;
}

function panelsInWords(document: ScenarioInput): string {
  const panels = document.panels ?? [];
  const sum = panels.reduce((total, group) => total + Number(group.count) * Number(group.module.ratedW), 0);
  const others = (document.sources ?? []).map((source) => choiceLabel(source.kind));
  const sun = panels.length === 0 ? "no panels" : `${figure(sum)}${THIN}W in ${count(panels.length, "group")}`;
  return [sun, ...new Set(others)].join(", ");
}

function bankInWords({ bank }: ScenarioInput): string {
  const blocks = bank.inParallel ?? 1;
  const size = `${plainFigure(Number(bank.blockAh) * Number(blocks))}${THIN}Ah`;
  return `${size} ${choiceLabel(bank.chemistry)}, reserve ${plainFigure(Number(bank.reserveShare) * 100)}${THIN}%`;
}

function shadeInWords(document: ScenarioInput): string {
  const obstacles = document.obstacles ?? [];
  const of = (kind: string) => obstacles.filter((each) => each.kind === kind).length;
  const parts = [
    of("tree") > 0 ? count(of("tree"), "tree") : "",
    of("box") > 0 ? count(of("box"), "box", "boxes") : "",
    of("horizon") > 0 ? "a skyline" : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? "open ground" : parts.join(", ");
}

function surenessInWords(document: ScenarioInput): string {
  const guesses = Object.values({ canopy: "guess", ...document.sureness }).filter((word) => word === "guess").length;
  const known = (document.knownDays ?? []).length;
  return [count(guesses, "guess", "guesses"), ...(known > 0 ? [`${count(known, "day")} forecast`] : [])].join(", ");
}

const GROUPS: readonly FormGroup[] = [
  {
    name: "Place and time",
    keys: ["name", "note", "place", "time", "weather", "format", "version", "$schema"],
    summary: whenInWords,
  },
  {
    name: "Gear and operators",
    keys: ["stations", "gear", "shedding"],
    summary: (document) =>
      `${count((document.stations ?? []).length, "station")}, ${count((document.gear ?? []).length, "load")}`,
  },
  { name: "Panels and charging", keys: ["panels", "sources", "selector", "models"], summary: panelsInWords },
  { name: "Shade", keys: ["obstacles"], summary: shadeInWords },
  { name: "Bank", keys: ["bank", "mainFeed", "converter"], summary: bankInWords },
  { name: "How sure are you?", keys: ["sureness", "knownDays", "operators"], summary: surenessInWords },
  { name: "Variants", keys: ["variants"], summary: (document) => count((document.variants ?? []).length, "variant") },
];

/** The groups in order. A field that is new to the format joins the last but one, so that nothing goes unseen. */
export function formGroups(): readonly FormGroup[] {
  const known = GROUPS.flatMap((group) => group.keys);
  const strangers = Object.keys(formSchema().properties!).filter((key) => !known.includes(key));
  return GROUPS.map((group) =>
    group.name === "How sure are you?" ? { ...group, keys: [...group.keys, ...strangers] } : group,
  );
}

/** How many problems lie in a group. */
export function problemsIn(group: FormGroup, problems: readonly Problem[]): number {
  return problems.filter((problem) => group.keys.includes(String(problem.path[0]))).length;
}
