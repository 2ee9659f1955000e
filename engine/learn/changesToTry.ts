import type { Change } from "../scenario/change.ts";
import { clockMinute } from "../scenario/clockTime.ts";
import type { ClockWindow } from "../scenario/clockWindow.ts";
import { drawnW } from "../scenario/draw.ts";
import type { Scenario } from "../scenario/scenario.ts";

/** Something that can still be done on site, as a change of the scenario from now on. */
export interface ChangeToTry {
  readonly id: string;
  /** What is done: "the data position off from 20:00 to 07:00". */
  readonly name: string;
  /** What it takes from the people there. */
  readonly takes: string;
  /** Where it can hurt; null where it cannot. */
  readonly caution: string | null;
  readonly changes: readonly Change[];
}

/** A value of the scenario as the JSON that a change holds: optional fields that are left out stay out. */
const json = (value: unknown) => JSON.parse(JSON.stringify(value)) as NonNullable<Change["to"]>;

/** Night as far as operating goes, minutes of the local day. */
const NIGHT_FROM = 20 * 60;
const NIGHT_TO = 7 * 60;
const DAY_MINUTES = 1440;
const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
/** A generator that charges before quiet time runs for so long, and starts unless the bank is all but full. */
const BEFORE_QUIET_MINUTES = 120;
const ALL_BUT_FULL_SHARE = 0.97;
const FULL_SHARE = 0.99;
/** Started this early, a generator still has the evening to fill the bank. */
const EARLY_START_SHARE = 0.7;
/** Things named by the shedding order that are tried one by one. */
const MOST_SHED = 3;

const GENERATOR_CAUTION =
  "Exhaust kills: run it in the open, downwind and well away from tents, cars and windows; let it cool before refuelling; keep to the quiet hours and rules of the place.";
const PANEL_CAUTION =
  "Cover or unplug a panel before its plugs are touched; two people in wind; keep cables out of the way of feet.";

/** What may help a scenario, as far as it has what is changed. Whether it does, the members say. */
export function changesToTry(scenario: Scenario): ChangeToTry[] {
  return [
    ...nightsOff(scenario),
    ...halfPower(scenario),
    ...halfSending(scenario),
    ...codeOnly(scenario),
    ...receiveOnly(scenario),
    ...turnedPanels(scenario),
    ...generators(scenario),
    ...goneWithout(scenario),
  ];
}

function nightsOff({ stations }: Scenario): ChangeToTry[] {
  const atNight = stations.filter((station) => {
    return JSON.stringify(byDay(station.staffed)) !== JSON.stringify(station.staffed);
  });
  return atNight.map((station) => ({
    id: `${station.id}-night-off`,
    name: `${station.name} off from 20:00 to 07:00`,
    takes: "nobody operates there at night",
    caution: null,
    changes: [{ at: `stations.${station.id}.staffed`, to: json(byDay(station.staffed)) }],
  }));
}

/** What of the stretches lies between 07:00 and 20:00; untouched stretches stay as they are written. */
function byDay(windows: readonly ClockWindow[]): ClockWindow[] {
  return windows.flatMap((window): ClockWindow[] => {
    const from = clockMinute(window.from);
    const length = (clockMinute(window.to) - from + DAY_MINUTES) % DAY_MINUTES || DAY_MINUTES;
    if (from >= NIGHT_TO && from + length <= NIGHT_FROM) return [window];
    return [0, 1].flatMap((day): ClockWindow[] => {
      const begins = Math.max(from, day * DAY_MINUTES + NIGHT_TO);
      const ends = Math.min(from + length, day * DAY_MINUTES + NIGHT_FROM);
      if (ends <= begins) return [];
      const { days } = window;
      const shifted = days?.map((name) => WEEKDAYS[(WEEKDAYS.indexOf(name) + day) % 7]!);
      return [{ from: clockWords(begins), to: clockWords(ends), ...(shifted === undefined ? {} : { days: shifted }) }];
    });
  });
}

function clockWords(minutes: number): string {
  const within = ((minutes % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(Math.floor(within / 60))}:${two(within % 60)}`;
}

const sending = ({ stations }: Scenario) =>
  stations.filter((station) => station.sendingShare > 0 && station.staffed.length > 0);

function halfPower(scenario: Scenario): ChangeToTry[] {
  const stations = sending(scenario).filter((station) => station.transmitW >= 0.02);
  if (stations.length === 0) return [];
  return [
    {
      id: "half-power",
      name: "transmit power halved",
      takes: "3 dB, half an S-unit at the other end",
      caution: null,
      changes: stations.map(({ id, transmitW }) => ({ at: `stations.${id}.transmitW`, to: transmitW / 2 })),
    },
  ];
}

function scaledSending(scenario: Scenario, factor: number): Change[] {
  return sending(scenario).flatMap(({ id, sendingShare, modes }): Change[] => [
    { at: `stations.${id}.sendingShare`, to: factor * sendingShare },
    {
      at: `stations.${id}.modes`,
      to: json(
        modes.map((mode) =>
          mode.sendingShare === undefined ? mode : { ...mode, sendingShare: factor * mode.sendingShare },
        ),
      ),
    },
  ]);
}

function halfSending(scenario: Scenario): ChangeToTry[] {
  const changes = scaledSending(scenario, 0.5);
  if (changes.length === 0) return [];
  return [{ id: "half-sending", name: "sending half as much", takes: "half the contacts", caution: null, changes }];
}

function receiveOnly(scenario: Scenario): ChangeToTry[] {
  const changes = scaledSending(scenario, 0);
  if (changes.length === 0) return [];
  const takes = "no contacts at all: the most that operating can give";
  return [{ id: "receive-only", name: "receiving only", takes, caution: null, changes }];
}

function codeOnly(scenario: Scenario): ChangeToTry[] {
  const stations = sending(scenario).filter(({ modes }) => modes.some(({ mode, share }) => mode !== "cw" && share > 0));
  if (stations.length === 0) return [];
  const names = stations.map((station) => station.name).join(", ");
  return [
    {
      id: "code-only",
      name: "Morse code only",
      takes: `other modes stay silent (${names}); somebody who copies code`,
      caution: null,
      changes: stations.map(({ id, sendingShare }) => ({
        at: `stations.${id}.modes`,
        to: [{ mode: "cw", share: 1, sendingShare }],
      })),
    },
  ];
}

function turnedPanels({ panels }: Scenario): ChangeToTry[] {
  return panels
    .filter((group) => group.count > 0 && group.mount.kind === "fixed")
    .map((group) => ({
      id: `${group.id}-turned`,
      name: `${group.name} turned to the sun at 8, noon and 15`,
      takes: "somebody to turn them three times a day",
      caution: PANEL_CAUTION,
      changes: [
        {
          at: `panels.${group.id}.mount`,
          to: { kind: "aimed", aims: [{ at: "08:00" }, { at: "12:00" }, { at: "15:00" }] },
        },
      ],
    }));
}

function generators({ sources }: Scenario): ChangeToTry[] {
  return sources.flatMap((source): ChangeToTry[] => {
    if (source.kind !== "generator" || source.fuelL <= 0) return [];
    const at = `sources.${source.id}`;
    const found: ChangeToTry[] = [
      {
        id: `${source.id}-before-quiet`,
        name: `${source.name} for two hours before quiet time, and at no other`,
        takes: "fuel, noise until quiet time, somebody beside it",
        caution: GENERATOR_CAUTION,
        changes: [
          { at: `${at}.allowed`, to: json(source.allowed.map(lastHours)) },
          { at: `${at}.startShare`, to: ALL_BUT_FULL_SHARE },
          { at: `${at}.stopShare`, to: FULL_SHARE },
        ],
      },
    ];
    if (source.startShare < EARLY_START_SHARE) {
      found.push({
        id: `${source.id}-early`,
        name: `${source.name} started at 70 % already`,
        takes: "fuel, and more hours of noise",
        caution: GENERATOR_CAUTION,
        changes: [
          { at: `${at}.startShare`, to: EARLY_START_SHARE },
          { at: `${at}.stopShare`, to: Math.max(source.stopShare, 0.95) },
        ],
      });
    }
    return found;
  });
}

/** The last two hours of a stretch of the clock. */
function lastHours(window: ClockWindow): ClockWindow {
  const from = clockMinute(window.from);
  const length = (clockMinute(window.to) - from + DAY_MINUTES) % DAY_MINUTES || DAY_MINUTES;
  if (length <= BEFORE_QUIET_MINUTES) return window;
  const begins = from + length - BEFORE_QUIET_MINUTES;
  const day = Math.floor(begins / DAY_MINUTES);
  const days = window.days?.map((name) => WEEKDAYS[(WEEKDAYS.indexOf(name) + day) % 7]!);
  return { from: clockWords(begins), to: window.to, ...(days === undefined ? {} : { days }) };
}

/** What the scenario itself names as able to go without; where it names nothing, the largest thing that is not always on. */
function goneWithout({ shedding, gear, stations }: Scenario): ChangeToTry[] {
  const usedW = (each: Scenario["gear"][number]) => each.count * drawnW(each.working) * each.use.share;
  const largest = gear
    .filter((each) => each.use.when !== "always" && each.count > 0)
    .sort((a, b) => usedW(b) - usedW(a))[0];
  const names = shedding.length > 0 ? shedding.slice(0, MOST_SHED) : largest === undefined ? [] : [largest.id];
  return names.map((id): ChangeToTry => {
    const thing = gear.find((each) => each.id === id);
    const station = stations.find((each) => each.id === id);
    const name = `without ${thing?.name ?? station?.name ?? id}`;
    const changes: Change[] =
      thing !== undefined
        ? [{ at: `gear.${id}.count`, to: 0 }]
        : [
            { at: `stations.${id}.staffed`, to: [] },
            { at: `stations.${id}.whenUnstaffed`, to: "off" },
          ];
    return { id: `without-${id}`, name, takes: "it is switched off at its fuse or plug", caution: null, changes };
  });
}
