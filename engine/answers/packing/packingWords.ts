import type { OwnedThing } from "../../packing/ownedThing.ts";
import type { PackedSet, PackingReport } from "../../packing/packingReport.ts";
import type { PackList } from "../../packing/packList.ts";
import type { PackOrder, PackTotals } from "../../packing/thingPrice.ts";
import { inside } from "../../reach/openPanels.ts";
import { displayUnit, toDisplay } from "../../words/displayUnits.ts";
import { figure, THIN } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";
import type { PackingPicture } from "./packingPicture.ts";

export const PACK_ORDER_WORDS: Readonly<Record<PackOrder, string>> = {
  mass: "weight",
  minutes: "minutes",
  money: "money",
};
const LEAST: Readonly<Record<PackOrder, string>> = {
  mass: "least to carry",
  minutes: "least work",
  money: "least money",
};

const heavy = (text: string): Words => ({ text, as: "figure" });
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** "Folding panel, 120 W" or "2 × Folding panel, 120 W" */
export const pieces = (name: string, count: number) => (count === 1 ? name : `${count} × ${name}`);

/** What goes along with panels and is no choice of its own. */
const isCompanion = ({ kind }: OwnedThing) => kind === "lead" || kind === "controller";

/** What a set is made of, without leads and controllers: "battery, 280 Ah and 2 × folding panel". */
export function setWords({ take }: Pick<PackedSet, "take">, things: readonly OwnedThing[]): string {
  const names = things.flatMap((thing, t) =>
    take[t]! > 0 && !isCompanion(thing) ? [pieces(inside(thing.name), take[t]!)] : [],
  );
  return names.length === 0 ? "nothing besides what is fitted" : listed(names);
}

/** "a", "a and b", "a; b and c": names have commas of their own. */
function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join("");
  const last = names.at(-1)!;
  return `${names.slice(0, -1).join("; ")} and ${last}`;
}

/** "40 kg", "40 kg and 1 not stated", "not stated"; masses in the unit that is shown. */
export function totalWords(totals: PackTotals, order: PackOrder): string {
  const { sum, notStated } = totals[order];
  const unit = { mass: displayUnit("kg"), minutes: "min", money: "in money" }[order];
  const said = `${totalFigure(sum, order)}${order === "money" ? " " : THIN}${unit}`;
  if (notStated === 0) return said;
  const missing = `${notStated} not stated`;
  return sum === 0 ? `${PACK_ORDER_WORDS[order]} of ${missing}` : `${said} and ${missing}`;
}

/** The figure alone, for a cell: "40", "40 + 1 not stated", "not stated". */
export function totalCell(totals: PackTotals, order: PackOrder): string {
  const { sum, notStated } = totals[order];
  if (notStated === 0) return totalFigure(sum, order);
  return sum === 0 ? "not stated" : `${totalFigure(sum, order)}, ${notStated} not stated`;
}

export function totalFigure(sum: number, order: PackOrder): string {
  if (order !== "mass") return figure(sum, Number.isInteger(sum) ? 0 : 1);
  const shown = toDisplay(sum, "kg");
  return figure(shown, shown < 10 ? 1 : 0);
}

/** What stands over the figures. */
export const totalHead = (order: PackOrder) => ({ mass: displayUnit("kg"), minutes: "min", money: "money" })[order];

const of100 = (holds: { readonly share: number }) => heavy(`${inHundred(holds)} of 100`);

/** The answer: what to take, what of it earns its place, what stays at home. */
export function packingSentence({ report, things }: Pick<PackingPicture, "report" | "things">): Words[] {
  const { proposed, targetShare } = report;
  const target = `${figure(100 * targetShare, 1)} of 100`;
  if (proposed === null) return noneWords(report, things, target);
  const takes = [
    ...(["mass", "minutes"] as const).map((order) => totalWords(proposed.totals, order)),
    ...(proposed.totals.money.sum > 0 || proposed.totals.money.notStated > 0
      ? [totalWords(proposed.totals, "money")]
      : []),
  ];
  const head: Words[] = report.isWithin
    ? [{ text: "Take " }]
    : [{ text: `Nothing within the limits holds in ${target}. Beyond them, ` }];
  const set = setWords(proposed, things);
  const verb = report.isWithin ? [] : [{ text: " would do it" }];
  return [
    ...head,
    heavy(set),
    ...verb,
    { text: ": " },
    ...(proposed.holds === null ? [] : [of100(proposed.holds), { text: ", " }]),
    { text: `${takes.join(", ")}. ` },
    ...earnsWords(report, things),
    ...(report.isWithin ? staysWords(report, things) : nearestWords(report, things)),
  ];
}

function noneWords({ nearest }: PackingReport, things: readonly OwnedThing[], target: string): Words[] {
  const none = { text: `Nothing that is on the list holds in ${target}` };
  if (nearest?.holds == null) return [none, { text: "." }];
  return [
    none,
    { text: "; the nearest is " },
    heavy(setWords(nearest, things)),
    { text: ", " },
    of100(nearest.holds),
    { text: "." },
  ];
}

function nearestWords({ nearest }: PackingReport, things: readonly OwnedThing[]): Words[] {
  if (nearest?.holds == null || !nearest.isWithin) return [];
  return [
    { text: "The nearest within them: " },
    heavy(setWords(nearest, things)),
    { text: ", " },
    of100(nearest.holds),
    { text: "." },
  ];
}

/** Of what is proposed, each thing that the target cannot do without, the dearest loss first. */
function earnsWords({ without }: PackingReport, things: readonly OwnedThing[]): Words[] {
  const sorted = [...without].sort((a, b) => a.holds.count - b.holds.count || a.thing - b.thing);
  return sorted.flatMap(({ thing, holds }, k) => {
    const { name, count } = things[thing]!;
    const many = count > 1;
    return k === 0
      ? [
          {
            text: `${capital(inside(name))} ${many ? "earn their" : "earns its"} place: without ${many ? "them" : "it"}, `,
          },
          heavy(inHundred(holds)),
          { text: ". " },
        ]
      : [{ text: `Without ${inside(name)}, ` }, heavy(inHundred(holds)), { text: ". " }];
  });
}

function staysWords({ proposed, leftOut }: PackingReport, things: readonly OwnedThing[]): Words[] {
  const stays = things.filter(
    (thing, t) =>
      thing.count > 0 && proposed!.take[t] === 0 && !isCompanion(thing) && leftOut.every((each) => each.thing !== t),
  );
  if (stays.length === 0) return [];
  const names = listed(stays.map(({ name, count }) => pieces(inside(name), count)));
  const isOne = stays.length === 1 && stays[0]!.count === 1;
  return [{ text: `${capital(names)} ${isOne ? "stays" : "stay"} at home.` }];
}

/** What a set of the frontier is best at, and whose things it needs besides the club's. */
export function remarkOf(set: PackedSet, place: number, { report, things }: PackingPicture): string {
  const best = (Object.keys(LEAST) as PackOrder[]).filter((order) => report.leastOf[order] === place);
  const whose = [...new Set(things.flatMap(({ who }, t) => (set.take[t]! > 0 && who !== undefined ? [who] : [])))];
  const said = [
    ...(set.isWithin ? [] : ["over the limits"]),
    ...best.map((order) => LEAST[order]),
    ...(whose.length > 0 ? [`from ${whose.join(", ")}`] : []),
  ];
  return said.join("; ");
}

/** What lies under the picture: what was run, what is beaten, what could not be used. */
export function packingNotes({ report, things, fitted }: PackingPicture): string[] {
  const { all, run, members, beaten, proposed } = report;
  const typical = proposed?.totals.mass.typical ?? 0;
  return [
    run === all
      ? `Every set was run under the same ${figure(members)} skies.`
      : `${figure(run)} of ${figure(all)} sets were run under the same ${figure(members)} skies; the others take no less of anything than one that reaches the target.`,
    ...(beaten?.holds == null
      ? []
      : [`Beaten: ${setWords(beaten, things)}, ${totalWords(beaten.totals, "mass")} for ${inHundred(beaten.holds)}.`]),
    ...(typical > 0 ? [`The weight of ${typical} of what is taken is what such things usually weigh.`] : []),
    ...report.leftOut.map(({ thing, why }) => `${things[thing]!.name} is in no set: ${why}.`),
    ...(fitted.length > 0 ? [`There in any case: ${fitted.join("; ")}.`] : []),
  ];
}

/** "73 kg, 4 lines not stated" under a list. */
export function listSum({ massKg, notStated }: PackList): string {
  const sum = `${totalFigure(massKg, "mass")}${THIN}${displayUnit("kg")}`;
  return notStated === 0 ? sum : `${sum}, ${notStated} not stated`;
}
