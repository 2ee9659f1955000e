import type { Change } from "../scenario/change.ts";
import { hoursIn } from "../scenario/clockWindow.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { Station } from "../scenario/station.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { endedEarlier, lengthOf, windowsWords, withoutNight } from "./clockWindows.ts";
import { type Amount, type Lever, NOTHING, put } from "./lever.ts";

/** Between two lengths of a stretch at the station, minutes. */
const STEP_MINUTES = 30;
/** The night for which a station is left alone. */
const NIGHT_FROM = 22 * 60;
const NIGHT_TO = 6 * 60;
/** Powers that transceivers are set to. */
const POWERS_W = [400, 200, 100, 75, 50, 40, 30, 25, 20, 15, 10, 5, 2.5, 1];
const MOST_POWERS = 6;

/** What can be less at each station: hours, power, what it does at night; or all of it at home. */
export function stationLevers(scenario: Scenario, grid: TimeGrid): Lever[] {
  return scenario.stations
    .flatMap((station) => [
      fewerHours(station, grid),
      offAtNight(station, grid),
      lessPower(station),
      morseOnly(station),
      atHome(scenario, station, grid),
    ])
    .filter(({ amounts }) => amounts.length > 0);
}

const onAirH = (grid: TimeGrid, station: Station, staffed: Station["staffed"]) => ({
  ...NOTHING,
  onAirH: hoursIn(grid, staffed) - hoursIn(grid, station.staffed),
});

function fewerHours(station: Station, grid: TimeGrid): Lever {
  const { id, staffed } = station;
  const longest = Math.max(0, ...staffed.map(lengthOf));
  const amounts: Amount[] = [];
  for (let cut = STEP_MINUTES; cut < longest; cut += STEP_MINUTES) {
    const left = endedEarlier(staffed, cut);
    amounts.push({
      words: `${windowsWords(left)} only`,
      changes: [put(`stations.${id}.staffed`, left)],
      price: onAirH(grid, station, left),
    });
  }
  const name = `${station.name}, fewer hours`;
  return { id: `hours-${id}`, kind: "hours", name, amounts, isMonotone: true, touches: [`stations.${id}.staffed`] };
}

function offAtNight(station: Station, grid: TimeGrid): Lever {
  const { id, staffed, whenUnstaffed, name } = station;
  const left = withoutNight(staffed, NIGHT_FROM, NIGHT_TO);
  const isLess = hoursIn(grid, left) < hoursIn(grid, staffed) - 1e-9;
  const off: Change[] = whenUnstaffed === "off" ? [] : [{ at: `stations.${id}.whenUnstaffed`, to: "off" }];
  const amounts: Amount[] = [];
  if (off.length > 0) amounts.push({ words: "off while nobody sits at it", changes: off, price: NOTHING });
  if (isLess && left.length > 0) {
    const changes = [...off, put(`stations.${id}.staffed`, left)];
    amounts.push({ words: "off from 22:00 to 06:00", changes, price: onAirH(grid, station, left) });
  }
  const touches = [`stations.${id}.whenUnstaffed`, `stations.${id}.staffed`];
  return { id: `night-${id}`, kind: "night", name: `${name}, off at night`, amounts, isMonotone: true, touches };
}

function lessPower({ id, name, transmitW, sendingShare }: Station): Lever {
  const powers = sendingShare > 0 ? POWERS_W.filter((power) => power < transmitW).slice(0, MOST_POWERS) : [];
  const amounts = powers.map(
    (power): Amount => ({
      words: `${power} W, was ${transmitW} W`,
      changes: [{ at: `stations.${id}.transmitW`, to: power }],
      price: NOTHING,
    }),
  );
  const lever = { id: `power-${id}`, kind: "power" as const, name: `${name}, less power`, amounts };
  return { ...lever, isMonotone: true, touches: [`stations.${id}.transmitW`] };
}

function morseOnly({ id, name, modes }: Station): Lever {
  const isAlready = modes.every(({ mode, share }) => mode === "cw" || share === 0);
  const amounts: Amount[] = isAlready
    ? []
    : [
        {
          words: "Morse only",
          changes: [{ at: `stations.${id}.modes`, to: [{ mode: "cw", share: 1 }] }],
          price: NOTHING,
        },
      ];
  const touches = [`stations.${id}.modes`];
  return { id: `mode-${id}`, kind: "mode", name: `${name}, another mode`, amounts, isMonotone: true, touches };
}

/** A station taken out; where something else of the plan goes by it, it stays without anybody and without anything. */
function leftAtHome({ gear, shedding }: Scenario, id: string): Change[] {
  if (gear.some(({ use }) => use.station === id)) {
    return [
      put(`stations.${id}.staffed`, []),
      put(`stations.${id}.whenUnstaffed`, "off"),
      put(`stations.${id}.companions`, []),
    ];
  }
  const others = shedding.includes(id)
    ? [
        put(
          "shedding",
          shedding.filter((name) => name !== id),
        ),
      ]
    : [];
  return [...others, { at: `stations.${id}`, remove: true }];
}

function atHome(scenario: Scenario, station: Station, grid: TimeGrid): Lever {
  const { id, name } = station;
  const amounts = [{ words: "", changes: leftAtHome(scenario, id), price: onAirH(grid, station, []) }];
  return {
    id: `home-${id}`,
    kind: "home",
    name: `${name} at home`,
    amounts,
    isMonotone: true,
    touches: [`stations.${id}`],
  };
}
