import type { Change } from "../scenario/change.ts";
import type { Gear } from "../scenario/gear.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type Amount, type Lever, NOTHING, put } from "./lever.ts";

/** Nights for which something that always works is switched off, each longer than the one before. */
const OFF = [
  ["23:00", "06:00"],
  ["22:00", "07:00"],
  ["20:00", "08:00"],
] as const;

/** Each device left at home, or switched off for the night by the clock. */
export function gearLevers({ gear, shedding }: Scenario): Lever[] {
  return gear
    .filter(({ count }) => count > 0)
    .flatMap((thing) => [atHome(thing, shedding), byTheClock(thing)])
    .filter(({ amounts }) => amounts.length > 0);
}

function atHome({ id, name, count }: Gear, shedding: readonly string[]): Lever {
  const others = shedding.includes(id)
    ? [
        put(
          "shedding",
          shedding.filter((each) => each !== id),
        ),
      ]
    : [];
  const amounts = Array.from({ length: count }, (_, k): Amount => {
    const left = count - 1 - k;
    const changes: Change[] =
      left === 0 ? [...others, { at: `gear.${id}`, remove: true }] : [put(`gear.${id}.count`, left)];
    return { words: count === 1 ? "" : left === 0 ? "all of them" : `${left}, was ${count}`, changes, price: NOTHING };
  });
  return {
    id: `home-${id}`,
    kind: "home",
    name: `${name} at home`,
    amounts,
    isMonotone: true,
    touches: [`gear.${id}`],
  };
}

function byTheClock({ id, name, use }: Gear): Lever {
  const amounts =
    use.when !== "always"
      ? []
      : OFF.map(
          ([off, on]): Amount => ({
            words: `off from ${off} to ${on}`,
            changes: [
              {
                at: `gear.${id}.use`,
                to: {
                  when: "byTheClock",
                  windows: [{ from: on, to: off }],
                  ...(use.share === 1 ? {} : { share: use.share }),
                },
              },
            ],
            price: NOTHING,
          }),
        );
  return {
    id: `clock-${id}`,
    kind: "clock",
    name: `${name}, off at night`,
    amounts,
    isMonotone: true,
    touches: [`gear.${id}`],
  };
}
