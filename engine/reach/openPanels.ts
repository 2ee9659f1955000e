import { PanelGroup } from "../scenario/panelGroup.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { isPortable } from "../spots/leadRule.ts";
import type { SiteSun, SunSpot } from "../spots/siteSun.ts";
import type { Spot } from "../spots/spotGrid.ts";
import { bringPrice } from "./bringPrice.ts";
import { type Amount, added, type Lever } from "./lever.ts";

/** Strings that are looked at on top of those there are. */
const MOST_MORE_STRINGS = 6;
const MOST_MODULES = 60;
/** A folding panel as clubs have them: 120 W, hinged in pairs (common practice, no source). */
const FOLDING_W = 120;
const PAIR = 2;
/** A string of folding panels has to stand above the bank: about 18 V each at the power point. */
const IN_SERIES: Readonly<Record<12 | 24 | 48, number>> = { 12: 2, 24: 2, 48: 4 };
/** Propped for the season's noon, between these tilts, °. */
const LEAST_TILT_DEG = 15;
const MOST_TILT_DEG = 70;
/** How far from the middle of the site they are looked for, and how high they stand, m. */
export const OPEN_WITHIN_M = 30;
const OPEN_HEIGHT_M = 0.5;
/** Slack of a lead that goes round things, m. */
const SLACK_M = 2;
const LEAST_LEAD_M = 5;
const LONGEST_LEAD_M = 200;

/** More modules in each group that there is, by whole strings. */
export function morePanels({ panels }: Scenario, sun: SiteSun): Lever[] {
  return panels.map((group) => {
    const { id, count, inSeries, module, bring } = group;
    const amounts: Amount[] = [];
    for (let k = 1; k <= MOST_MORE_STRINGS && count + k * inSeries <= MOST_MODULES; k++) {
      const to = count + k * inSeries;
      amounts.push({
        words: `${to} of ${module.ratedW} W, was ${count}`,
        changes: [{ at: `panels.${id}.count`, to }],
        price: bringPrice(bring, to - count),
        why: `${(to - count) * module.ratedW} W more where ${lightWords(sun.shareOf(group))} of the open's light comes`,
      });
    }
    const name = `More panels, ${inside(group.name)}`;
    return { id: `panels-${id}`, kind: "panels", name, amounts, isMonotone: true, touches: [`panels.${id}.count`] };
  });
}

/** 0.83 as "83 %" */
export const lightWords = (share: number) => `${Math.round(100 * share)} %`;

/** A name inside a sentence: "Van roof" becomes "van roof", and "HF panels" stay what they are. */
export const inside = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/**
 * Panels that stand in the open: those that are at hand elsewhere (`lent`), else, where the plan has none to carry out, a folding pair at the
 * sunniest spot.
 */
export function openPanels(scenario: Scenario, lent: readonly unknown[], sun: SiteSun): Lever[] {
  const groups = lent.filter(isGroup).filter(({ id }) => scenario.panels.every((each) => each.id !== id));
  if (groups.length > 0) return groups.map((group) => lentPanels(group, sun));
  if (scenario.panels.some(isPortable)) return [];
  return [foldingPairs(scenario, sun)];
}

/** A panel group as it is written in a document. */
type WrittenGroup = Pick<PanelGroup, "id" | "name" | "count"> &
  Partial<Pick<PanelGroup, "inSeries" | "bring" | "at">> & { readonly module: { readonly ratedW: number } };

function isGroup(value: unknown): value is WrittenGroup {
  const group = value as Partial<WrittenGroup> | null;
  return typeof group?.id === "string" && typeof group.count === "number" && typeof group.module?.ratedW === "number";
}

function lentPanels(group: WrittenGroup, sun: SiteSun): Lever {
  const read = PanelGroup.safeParse(group);
  const where = read.success ? ` where ${lightWords(sun.shareOf(read.data))} of the open's light comes` : "";
  const inSeries = group.inSeries ?? 1;
  const most = Math.min(MOST_MODULES, Math.max(group.count, inSeries * MOST_MORE_STRINGS));
  const amounts: Amount[] = [];
  for (let count = inSeries; count <= most; count += inSeries) {
    amounts.push({
      words: `${count} of ${group.module.ratedW} W`,
      changes: [added("panels", { ...group, count })],
      price: bringPrice(group.bring, count),
      why: `${count * group.module.ratedW} W more${where}`,
    });
  }
  return {
    id: `lent-${group.id}`,
    kind: "open",
    name: group.name,
    amounts,
    isMonotone: true,
    touches: [`panels.${group.id}`],
  };
}

function foldingPairs({ place, bank, panels, sources }: Scenario, sun: SiteSun): Lever {
  const inSeries = IN_SERIES[bank.nominalV];
  const taken = [...panels, ...sources].map(({ id }) => id);
  let id = "folding";
  for (let n = 2; taken.includes(id); n++) id = `folding-${n}`;
  const groupOf = (count: number, { eastM, northM }: Spot) => ({
    id,
    name: "Folding panels in the open",
    count,
    inSeries,
    module: { ratedW: FOLDING_W },
    mount: proppedUp(place.latitudeDeg),
    at: { eastM, northM, heightM: OPEN_HEIGHT_M },
    controller: { kind: "mppt", cable: { awg: "10", oneWayM: leadM({ eastM, northM }) } },
  });
  const fewest = Math.max(PAIR, inSeries);
  const spot = openSpot(place.latitudeDeg, sun);
  const amounts: Amount[] = [];
  for (let count = fewest; count <= PAIR * MOST_MORE_STRINGS; count += fewest) {
    const group = groupOf(count, spot);
    amounts.push({
      words: `${count} of ${FOLDING_W} W`,
      changes: [added("panels", group)],
      price: bringPrice(undefined, count),
      why: `${count * FOLDING_W} W more where ${lightWords(spot.sunShare)} of the open's light comes`,
    });
  }
  return {
    id: "open",
    kind: "open",
    name: "Folding panels in the open",
    amounts,
    isMonotone: true,
    touches: [`panels.${id}`],
  };
}

/** The sunniest place for a folding panel within some metres of the middle of the site; the middle where none is sunnier. */
export function openSpot(latitudeDeg: number, sun: SiteSun, withinM = OPEN_WITHIN_M): SunSpot {
  const middle = PanelGroup.parse({
    id: "folding",
    name: "Folding panel",
    count: 1,
    module: { ratedW: FOLDING_W },
    mount: proppedUp(latitudeDeg),
    at: { eastM: 0, northM: 0, heightM: OPEN_HEIGHT_M },
  });
  return sun.near(middle, withinM) ?? { eastM: 0, northM: 0, sunShare: sun.shareOf(middle) };
}

/** Propped up and left alone: facing the equator, about as steep as the latitude (common practice, no source). */
export function proppedUp(latitudeDeg: number) {
  const tiltDeg = Math.round(Math.min(MOST_TILT_DEG, Math.max(LEAST_TILT_DEG, Math.abs(latitudeDeg))));
  return { kind: "fixed" as const, tiltDeg, azimuthDeg: latitudeDeg < 0 ? 0 : 180 };
}

/** How long a lead is that reaches a spot from the middle of the site. */
export function leadM({ eastM, northM }: Pick<Spot, "eastM" | "northM">): number {
  return Math.min(LONGEST_LEAD_M, Math.max(LEAST_LEAD_M, Math.ceil(Math.hypot(eastM, northM)) + SLACK_M));
}
