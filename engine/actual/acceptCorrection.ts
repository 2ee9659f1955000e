import { SURENESS_SPREAD } from "../run/memberFigures.ts";
import { SURENESS_WORDS, type Sureness, type SurenessWord } from "../scenario/chanceFields.ts";
import type { Change } from "../scenario/change.ts";
import { type Draw, drawnW } from "../scenario/draw.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { CORRECTIONS, type Correction, type CorrectionName, type FittedFigure } from "./fitCorrection.ts";

/** A correction as changes to the plan it was fitted to: ready to stand among a scenario's variants. */
export interface AcceptedCorrection {
  readonly id: string;
  readonly name: string;
  readonly changes: readonly Change[];
  /** What could not be written down as found, as sentences. */
  readonly remarks: readonly string[];
}

/** A variant holds at most this many changes; beyond it whole lists are written instead of single figures. */
const MOST_CHANGES = 100;

/**
 * Writes a correction into changes: draws, sending shares, losses of the panels, light through crowns, health of the bank, and how sure each of
 * them is now. The charge at the start is of that event alone and stays out.
 * @param only which figures to take; those that the log found when left out
 * @throws RangeError if a figure is asked for that the log does not have
 */
export function acceptCorrection(
  scenario: Scenario,
  correction: Correction,
  only?: readonly CorrectionName[],
): AcceptedCorrection {
  const taken = CORRECTIONS.filter((name) => name !== "start").flatMap((name): FittedFigure[] => {
    const figure = correction.figures.find((each) => each.name === name)!;
    if (only === undefined) return figure.status === "found" ? [figure] : [];
    if (!only.includes(name)) return [];
    if (figure.status === "missing" || figure.status === "open") {
      throw new RangeError(`${name} cannot be taken: ${figure.sentence}`);
    }
    return [figure];
  });
  const remarks: string[] = [];
  const factorOf = (name: CorrectionName) => taken.find((figure) => figure.name === name)?.value;
  const changes: Change[] = [];
  const [idle, sending] = [factorOf("idle"), factorOf("sending")];
  if (idle !== undefined) changes.push(...idleChanges(scenario, idle));
  if (sending !== undefined) changes.push(...sendingChanges(scenario, sending, remarks));
  const yieldFactor = factorOf("yield");
  if (yieldFactor !== undefined) changes.push(...yieldChanges(scenario, yieldFactor, remarks));
  const shade = factorOf("shade");
  if (shade !== undefined) changes.push(...shadeChanges(scenario, shade, remarks));
  const capacity = factorOf("capacity");
  if (capacity !== undefined) changes.push(...capacityChanges(scenario, capacity));
  const sureness = surenessAfter(scenario.sureness, taken);
  if (taken.length > 0) changes.push({ at: "sureness", to: sureness });
  const days = daysInWords(correction, scenario);
  const name = `calibrated from ${days}`;
  const found = taken.map((figure) => figure.sentence).join(" ");
  const note = `${scenario.note === undefined ? "" : `${scenario.note} `}Calibrated from ${days}. ${found}`;
  if (taken.length > 0) changes.push({ at: "note", to: note.slice(0, 4000) });
  return {
    id: "calibrated",
    name,
    changes: changes.length > MOST_CHANGES ? inWholeLists(changes, scenario) : changes,
    remarks,
  };
}

function daysInWords({ fromMs, toMs }: Correction, scenario: Scenario): string {
  // The log's first and last hour on the plan's clock, near enough for a date.
  const offsetMs = Math.round(scenario.place.longitudeDeg / 15) * 3_600_000;
  const date = (ms: number) => new Date(ms + offsetMs).toISOString().slice(0, 10);
  const [first, last] = [date(fromMs), date(toMs - 1)];
  return first === last ? `the meter's log of ${first}` : `the meter's log of ${first} to ${last}`;
}

/** A draw so many times as large, in the form it was written in. */
function scaled(draw: Draw, factor: number): Record<string, number> {
  const times = (value: number) => +(value * factor).toPrecision(4);
  if (draw.drawW !== undefined) return { drawW: times(draw.drawW) };
  return { drawA: times(draw.drawA!), atV: draw.atV! };
}

/** The plan's draws between transmissions: gear, receivers, and companions as far as they do not work for sending. */
function idleChanges(scenario: Scenario, factor: number): Change[] {
  const changes: Change[] = [];
  const scale = (at: string, draw: Draw) => {
    if (drawnW(draw) > 0) changes.push({ at, to: scaled(draw, factor) });
  };
  for (const thing of scenario.gear) {
    scale(`gear.${thing.id}.idle`, thing.idle);
    scale(`gear.${thing.id}.working`, thing.working);
  }
  for (const station of scenario.stations) {
    scale(`stations.${station.id}.radio.receive`, station.radio.receive);
    for (const companion of station.companions) {
      const at = `stations.${station.id}.companions.${companion.id}`;
      scale(`${at}.idle`, companion.idle);
      if (companion.works === "sending") {
        const moreW = drawnW(companion.working) + (factor - 1) * drawnW(companion.idle);
        if (drawnW(companion.idle) > 0) changes.push({ at: `${at}.working`, to: { drawW: +moreW.toPrecision(4) } });
      } else scale(`${at}.working`, companion.working);
    }
  }
  return changes;
}

function sendingChanges(scenario: Scenario, factor: number, remarks: string[]): Change[] {
  const times = (share: number, where: string) => {
    if (share * factor > 1) remarks.push(`${where} would send for more than the whole clock; it was held at 1.`);
    return Math.min(1, +(share * factor).toPrecision(4));
  };
  return scenario.stations.flatMap((station) => [
    { at: `stations.${station.id}.sendingShare`, to: times(station.sendingShare, station.name) },
    ...station.modes.flatMap((mode, m) =>
      mode.sendingShare === undefined
        ? []
        : [{ at: `stations.${station.id}.modes.${m}.sendingShare`, to: times(mode.sendingShare, station.name) }],
    ),
  ]);
}

/** What the losses keep is raised or lowered; they stay in proportion, and what is more than all of them is left out. */
function yieldChanges(scenario: Scenario, factor: number, remarks: string[]): Change[] {
  return scenario.panels.map((group) => {
    const kept = group.losses.reduce((product, loss) => product * (1 - loss.share), 1);
    const wanted = kept * factor;
    const at = `panels.${group.id}.losses`;
    if (factor <= 1) {
      return { at, to: [...group.losses, { name: "as metered", share: +(1 - factor).toFixed(4) }].slice(-20) };
    }
    if (wanted >= 1) {
      remarks.push(`${group.name} gave more than its modules' rating without any loss; all its losses were taken out.`);
      return { at, to: [] };
    }
    const power = Math.log(wanted) / Math.log(kept);
    return { at, to: group.losses.map((loss) => ({ ...loss, share: +(1 - (1 - loss.share) ** power).toFixed(5) })) };
  });
}

function shadeChanges(scenario: Scenario, factor: number, remarks: string[]): Change[] {
  return scenario.obstacles.flatMap((tree): Change[] => {
    if (tree.kind !== "tree") return [];
    const times = (share: number) => {
      if (share * factor > 0.95)
        remarks.push(`${tree.name ?? tree.id} would let more light through than any crown; it was held at 0.95.`);
      return Math.min(0.95, +(share * factor).toPrecision(4));
    };
    return [
      { at: `obstacles.${tree.id}.transmittanceInLeafShare`, to: times(tree.transmittanceInLeafShare) },
      { at: `obstacles.${tree.id}.transmittanceBareShare`, to: times(tree.transmittanceBareShare) },
    ];
  });
}

/** Health up to new; what is more than that goes onto the label. */
function capacityChanges({ bank }: Scenario, factor: number): Change[] {
  const health = bank.healthShare * factor;
  if (health <= 1) return [{ at: "bank.healthShare", to: Math.max(0.2, +health.toFixed(4)) }];
  return [
    { at: "bank.healthShare", to: 1 },
    { at: "bank.blockAh", to: +(bank.blockAh * health).toPrecision(4) },
  ];
}

const SURENESS_OF: Partial<Record<CorrectionName, keyof Sureness>> = {
  idle: "idleDraw",
  yield: "panelYield",
  shade: "canopy",
  capacity: "bankHealth",
};

/** The word whose spread is the least that still covers what the log left open, and never a vaguer one than before. */
function surenessAfter(before: Sureness, taken: readonly FittedFigure[]): Sureness {
  const after = { ...before };
  for (const figure of taken) {
    const field = SURENESS_OF[figure.name];
    if (field === undefined) continue;
    const covering = (word: SurenessWord) => SURENESS_SPREAD[field][word] >= 0.8 * figure.spread;
    const word = SURENESS_WORDS.find(covering) ?? before[field];
    if (SURENESS_SPREAD[field][word] < SURENESS_SPREAD[field][before[field]]) after[field] = word;
  }
  return after;
}

/** The same changes with each list written whole, for plans with more things than a variant may have changes. */
function inWholeLists(changes: readonly Change[], scenario: Scenario): Change[] {
  const lists = ["gear", "stations", "panels", "obstacles"] as const;
  const copy = JSON.parse(JSON.stringify(scenario)) as Record<string, unknown>;
  const isInside = (change: Change) => lists.find((list) => change.at.startsWith(`${list}.`));
  for (const change of changes) if (isInside(change) !== undefined) setAt(copy, change.at.split("."), change.to);
  const touched = lists.filter((list) => changes.some((change) => isInside(change) === list));
  return [
    ...touched.map((list): Change => ({ at: list, to: copy[list] as Change["to"] })),
    ...changes.filter((change) => isInside(change) === undefined),
  ];
}

function setAt(root: unknown, path: readonly string[], value: unknown): void {
  let parent = root as Record<string, unknown> | { id?: string }[];
  for (const [k, segment] of path.entries()) {
    const key = Array.isArray(parent)
      ? String(
          Math.max(
            parent.findIndex((item) => item.id === segment),
            /^\d+$/.test(segment) ? Number(segment) : -1,
          ),
        )
      : segment;
    if (k === path.length - 1) (parent as Record<string, unknown>)[key] = value;
    else parent = (parent as Record<string, unknown>)[key] as typeof parent;
  }
}
