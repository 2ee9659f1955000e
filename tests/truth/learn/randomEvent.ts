import { nextNormal, nextUnit, openStream, STREAM_WORDS, seedWords } from "../../../engine/chance/stream.ts";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { stepMember } from "../../../engine/ensemble/stepMember.ts";
import { foretold } from "../../../engine/learn/foretold.ts";
import { learn } from "../../../engine/learn/learn.ts";
import { intervalOf } from "../../../engine/learn/lessons.ts";
import { type Observation, observationsOf } from "../../../engine/learn/observations.ts";
import type { Reading } from "../../../engine/learn/reading.ts";
import type { PlacedReading } from "../../../engine/learn/readReadings.ts";
import { traitFigures } from "../../../engine/learn/traitFigures.ts";
import type { ClimateTables } from "../../../engine/place/climateTables.ts";
import { FIGURE_IDLE_SHARE } from "../../../engine/run/memberFigures.ts";
import { STORED_AH } from "../../../engine/run/stepState.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** What became of one event: the truth's charge at the end, and the middle eight in ten before and after a day of readings. */
export interface EventResult {
  readonly truth: number;
  readonly before: readonly [low: number, high: number];
  readonly after: readonly [low: number, high: number];
  /** Draw between transmissions: the truth's, and the middle eight in ten after the readings. */
  readonly idle: readonly [truth: number, low: number, high: number];
  readonly fewestEffective: number;
  readonly unexplained: number;
}

export const EVENT_MEMBERS = 400;
/** Hours after the start at which somebody reads: one day. */
const READ_AT_H = [3, 8, 12, 18, 24] as const;
/** Truths have numbers that no filter ever runs. */
const FIRST_TRUTH = 500_000;

const PLACES = [
  { name: "moor (invented)", latitudeDeg: 52.8, longitudeDeg: 8.1, elevationM: 20, zone: "Europe/Berlin" },
  { name: "foothills (invented)", latitudeDeg: 46.9, longitudeDeg: 15.6, elevationM: 310, zone: "Europe/Vienna" },
  { name: "high desert (invented)", latitudeDeg: 35.2, longitudeDeg: -106.4, elevationM: 1600, zone: "America/Denver" },
  { name: "lakes (invented)", latitudeDeg: 60.6, longitudeDeg: 25.1, elevationM: 90, zone: "Europe/Helsinki" },
  { name: "prairie (invented)", latitudeDeg: 41.1, longitudeDeg: -96.5, elevationM: 350, zone: "America/Chicago" },
] as const;

/** A scenario drawn at random: place, season, length, gear, panels, trees, bank, and how sure its figures are. */
function randomScenario(unit: () => number): ScenarioInput {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(unit() * from.length)]!;
  const between = (low: number, high: number) => low + (high - low) * unit();
  const two = (value: number) => String(value).padStart(2, "0");
  const start = new Date(
    Date.UTC(2026, 3 + Math.floor(unit() * 7), 1 + Math.floor(unit() * 26), 9 + Math.floor(unit() * 6)),
  );
  const end = new Date(start.getTime() + 3_600_000 * Math.round(between(42, 72)));
  const local = (at: Date) =>
    `${at.getUTCFullYear()}-${two(at.getUTCMonth() + 1)}-${two(at.getUTCDate())}T${two(at.getUTCHours())}:00`;
  const any = ["measured", "dataSheet", "guess"] as const;
  return {
    format: "duskline-scenario",
    version: 1,
    name: "random event (invented)",
    place: pick(PLACES),
    time: { start: local(start), end: local(end), stepMinutes: 10 },
    weather: { kind: "typical" },
    gear: [
      { id: "router", name: "Router", working: { drawW: Math.round(between(4, 15)) }, use: { when: "always" } },
      { id: "fridge", name: "Fridge", working: { drawW: 45 }, use: { when: "always", share: 0.2 } },
      { id: "lamps", name: "Lamps", working: { drawW: Math.round(between(5, 30)) }, use: { when: "afterDark" } },
    ],
    stations: [
      {
        id: "hf",
        name: "HF position",
        radio: {
          ratedW: 100,
          receive: { drawA: 1.2, atV: 13.8 },
          fullPower: { drawA: 20, atV: 13.8 },
          bias: { drawA: 2, atV: 13.8 },
        },
        companions: [{ id: "laptop", name: "laptop", working: { drawW: 15 } }],
        staffed: [{ from: "09:00", to: pick(["18:00", "22:00"]) }],
        modes: [{ mode: pick(["ssb", "cw", "data"]), share: 1 }],
        transmitW: pick([20, 50, 100]),
        sendingShare: between(0.08, 0.25),
      },
    ],
    panels: [
      {
        id: "field",
        name: "Panels",
        count: pick([1, 2]),
        module: { ratedW: pick([60, 100, 150]) },
        mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 },
        at: { eastM: 0, northM: 0, heightM: 0.8 },
      },
    ],
    obstacles:
      unit() < 0.5
        ? []
        : [-6, 0, 6].map((eastM, k) => ({
            kind: "tree" as const,
            id: `tree${k}`,
            eastM,
            northM: -6,
            heightM: 11,
            crownBaseM: 2,
            crownRadiusM: 4,
            transmittanceInLeafShare: 0.2,
          })),
    bank: {
      chemistry: pick(["lfp", "agm"]),
      blockAh: Math.round(between(280, 420)),
      startShare: between(0.75, 0.95),
      reserveShare: 0.2,
      temperature: 15,
    },
    sureness: {
      idleDraw: pick(any),
      startCharge: pick(any),
      bankHealth: pick(any),
      canopy: pick(["dataSheet", "guess"]),
      panelYield: pick(any),
    },
  };
}

/** Draws event `number`, lets one member outside the filter's be true, reads its meters with their errors, and learns. */
export async function randomEvent(number: number, climate: ClimateTables): Promise<EventResult> {
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, seedWords("random events"), number, "figures");
  const read = readScenario(randomScenario(() => nextUnit(state)));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  const ready = prepareEnsemble(read.scenario, { climate }, `event ${number}`);
  if (!ready.ok) throw new Error(ready.problems.map(({ message }) => message).join(" "));
  const { ensemble } = ready;
  const truthNumber = FIRST_TRUTH + number;
  const room = makeMemberRoom(ensemble);
  stepMember(ensemble, truthNumber, room);
  const truth = room.run.state[STORED_AH]! / ensemble.prepared.bank.fullAh;
  const idleTruth = room.inputs.figures[FIGURE_IDLE_SHARE]!;
  const readings = READ_AT_H.map((hour, k): PlacedReading => {
    const place = hour / ensemble.prepared.grid.stepH;
    const kind = (["chargeShare", "outAh", "chargeShare", "restV", "chargeShare"] as const)[k]!;
    const exact = { at: "2026-01-01T00:00", [kind]: 0.5, ...(k === 2 ? { loadA: 1 } : {}) } as Reading;
    const shown = (reading: Reading): Observation[] =>
      observationsOf([{ reading, number: k, place }], ensemble.prepared);
    // Twice: the errors of some meters depend on what they show.
    const values = (reading: Reading) => shown(reading).map((each) => foretold(each, ensemble, room, 0)!);
    const named = (figures: readonly number[]): Reading =>
      ({ at: "2026-01-01T00:00", [kind]: figures[0], ...(k === 2 ? { loadA: figures[1] } : {}) }) as Reading;
    const wanted = shown(named(values(exact)));
    const noisy = wanted.map(({ kind: of, value, sigma }) => {
      const off = value + sigma * nextNormal(state);
      return of === "charge" ? Math.max(0, Math.min(1, off)) : Math.max(0, off);
    });
    return { reading: named(noisy), number: k, place };
  });
  const learned = await learn(ensemble, readings, EVENT_MEMBERS);
  const before = intervalOf(learned.before.outcomes.endShare);
  const after = intervalOf(learned.after.outcomes.endShare);
  const idle = intervalOf(traitFigures(ensemble, learned.particles, "idleDraw")!);
  return {
    truth,
    before: [before.p10, before.p90],
    after: [after.p10, after.p90],
    idle: [idleTruth, idle.p10, idle.p90],
    fewestEffective: learned.stages.reduce((fewest, stage) => Math.min(fewest, stage.effective), EVENT_MEMBERS),
    unexplained: learned.unexplained.length,
  };
}
