import type { Change } from "../scenario/change.ts";
import { GEAR_AT_V, type GenericGear } from "./gearTable.ts";
import type { Measurement } from "./measuredGear.ts";

const WINDOWS = {
  evenings: [{ from: "18:00", to: "23:00" }],
  nights: [{ from: "22:30", to: "06:30" }],
} as const;
const STAFFED = [{ from: "09:00", to: "22:00" }];
/** What a linear final takes keyed with no signal, part of full power (common practice: 3 of 20 A). */
const BIAS_SHARE = 0.15;

/**
 * The change that puts a kind of gear into a scenario: a station for a transceiver, a load for anything else. What was measured goes before
 * what is usual.
 * @param taken short names that are in use among gear and stations
 */
export function gearChange(gear: GenericGear, measured: Measurement | undefined, taken: readonly string[]): Change {
  const draw = (value: number) => (gear.unit === "W" ? { drawW: value } : { drawA: value, atV: GEAR_AT_V });
  const idle = measured?.idle ?? gear.idle?.usual;
  const working = measured?.working ?? gear.working.usual;
  let id = gear.id;
  for (let n = 2; taken.includes(id); n++) id = `${gear.id}-${n}`;
  const named = { id, name: gear.name };
  if (gear.radio !== null) {
    const { ratedW, mode } = gear.radio;
    const bias = mode === "ssb" ? { bias: draw(BIAS_SHARE * working) } : {};
    const radio = { ratedW, receive: draw(idle ?? 0), fullPower: draw(working), ...bias };
    const modes = [{ mode, share: 1 }];
    return {
      at: "stations",
      add: { ...named, radio, staffed: STAFFED, modes, transmitW: ratedW, sendingShare: 0.15 },
    } as Change;
  }
  const { use, share } = gear;
  const when =
    use === "evenings" || use === "nights"
      ? { when: "byTheClock", windows: WINDOWS[use].map((window) => ({ ...window })) }
      : { when: use };
  return {
    at: "gear",
    add: {
      ...named,
      ...(idle === undefined ? {} : { idle: draw(idle) }),
      working: draw(working),
      use: { ...when, ...(share === 1 ? {} : { share }) },
    },
  } as Change;
}
