import type { Scenario } from "../scenario/scenario.ts";
import { TOUCH_LIMITS_V } from "./touchLimits.ts";

/** Something that can hurt somebody who carries a plan out. */
export interface Caution {
  /** Stays the same: lines point at it. */
  readonly id: string;
  /** One or two words: "Fire and short circuit". */
  readonly title: string;
  readonly words: string;
  /** Why it is shown for this scenario, a half sentence: "a bank of 280 Ah"; null for what is always true. */
  readonly why: string | null;
}

/** What every report begins its cautions with. */
export const NO_PERMIT =
  "A plan and not a permit: local codes and licensed persons decide what may be built and connected.";

const percent = (share: number) => `${Math.round(100 * share)} %`;

/**
 * The cautions that matter for a scenario, each with the reason; the same words for the command line and the page. What the
 * scenario has nothing of (a generator, a roof) is left out; fire, the bank's weight and lightning are always there.
 * @param coldestBankC coldest bank of the event, °C, where a run has told
 */
export function cautionsFor(scenario: Scenario, coldestBankC?: number): Caution[] {
  const { bank } = scenario;
  const all = [
    permit(),
    fire(scenario),
    bank.chemistry === "lfp" ? lithium(coldestBankC) : lead(scenario),
    ...(scenario.panels.filter((group) => group.count > 0).length > 0 ? [panelShock(scenario), roof(scenario)] : []),
    ...scenario.sources.flatMap((source) => (source.kind === "generator" ? [fumes(source.name)] : [])).slice(0, 1),
    ...(scenario.sources.some(({ kind }) => kind !== "vehicle") ? [mains(scenario)] : []),
    ...(scenario.sources.some(({ kind }) => kind === "vehicle") ? [vehicle()] : []),
    ...(scenario.stations.length > 0 ? [exposure(scenario), lightning()] : []),
    lifting(scenario),
  ];
  return all;
}

const caution = (id: string, title: string, words: string, why: string | null): Caution => ({ id, title, words, why });

const permit = () => caution("permit", "No permit", NO_PERMIT, null);

function fire({ bank }: Scenario): Caution {
  return caution(
    "fire",
    "Fire and short circuit",
    "A bank drives hundreds of amperes, and lithium thousands, into a dropped spanner: enough to weld it, burn a hand and set fire to a wire. Fuse every conductor as close to the bank's post as practicable (within 18 cm), for the wire and not for the load, with a fuse that can interrupt the bank's short-circuit current. Cover the posts, take off rings and watches, mind the polarity.",
    `${bank.blockAh * bank.inParallel} Ah at ${bank.nominalV} V`,
  );
}

function lithium(coldestBankC: number | undefined): Caution {
  const cold = coldestBankC === undefined ? "" : `, ${Math.round(coldestBankC)} °C at its coldest`;
  return caution(
    "lithium",
    "Lithium in heat and cold",
    "Only packs with their own battery management. Never charge at or below 0 °C unless the maker allows it: the cells plate and are ruined, and may burn later. Keep the pack under 45 °C, out of the sun and away from heaters. Join packs only when all are full and within 0.2 V. A pack that is swollen, smells or was dropped stays at home.",
    `LFP${cold}`,
  );
}

function lead({ bank }: Scenario): Caution {
  return caution(
    "lead",
    "Lead-acid gas and acid",
    "Charging gives off hydrogen, which explodes at four parts in a hundred of air: ventilate above and below, no flame, no switch or fuse in the same box, and never in a tent that people sleep in. Acid burns eyes and skin: goggles, gloves, water at hand.",
    bank.chemistry === "agm" ? "AGM, which vents when overcharged" : "flooded lead",
  );
}

function panelShock(scenario: Scenario): Caution {
  const highestV = scenario.panels.reduce(
    (most, group) => (group.count > 0 ? Math.max(most, group.inSeries * group.module.vocV) : most),
    0,
  );
  return caution(
    "shock",
    "Panels are live",
    `Panels in the light cannot be switched off: cover them before you work, and never pull a plug under load, for the arc does not go out by itself.${touching(highestV)} Cold raises the open volts.`,
    `strings of ${highestV.toFixed(0)} V open`,
  );
}

/** What touching a string's open volts means, as a sentence with a space before it; nothing where codes allow it even where it is wet. */
function touching(openV: number): string {
  const { wet, dry } = TOUCH_LIMITS_V;
  if (openV <= wet) return "";
  const stands = ` A string of yours stands at ${openV.toFixed(0)} V`;
  if (openV <= dry)
    return `${stands}: codes allow ${dry} V DC bare where it is dry, but ${wet} V where ground, skin or plugs are wet, and in a field they are.`;
  return `${stands}, above the ${dry} V DC that codes allow bare where it is dry, and the ${wet} V where it is wet: touching it can kill.`;
}

function roof(scenario: Scenario): Caution {
  const high = scenario.panels.filter((group) => group.count > 0 && group.at.heightM > 1.5);
  return caution(
    "roof",
    "Roof, ladder and wind",
    "Panels are sails: tie them down for the gust and not the breeze. Ladder footed and held, three points of contact, nobody alone and nobody on a wet roof; two people to lift a panel up. Keep everything that can fall well clear of power lines.",
    high.length > 0
      ? `${high[0]!.name} ${high[0]!.at.heightM} m above the ground`
      : `${scenario.panels.filter((group) => group.count > 0)[0]!.name} in the wind`,
  );
}

const fumes = (name: string) =>
  caution(
    "fumes",
    "Generator fumes",
    "Carbon monoxide kills without a smell: outdoors only, at least 6 m from anything people breathe in, exhaust away and downwind, never in a tent, trailer, porch or under a tarpaulin, and an alarm in each sleeping space. Let it cool before refuelling; no flame near fuel.",
    name,
  );

function mains(scenario: Scenario): Caution {
  return caution(
    "mains",
    "Mains voltage",
    "Mains and generator wiring is for licensed persons: residual-current protection, an earth as the local code asks, leads made for outdoors and off the wet ground. Never feed a building backwards.",
    scenario.sources
      .filter(({ kind }) => kind !== "vehicle")
      .map(({ name }) => name)
      .join(", "),
  );
}

const vehicle = () =>
  caution(
    "vehicle",
    "Charging from a vehicle",
    "Fuse the lead at the vehicle's battery as well as at the bank: it has a source at either end. Never run the engine where people sleep or in a closed space.",
    "a charger on a vehicle",
  );

function exposure(scenario: Scenario): Caution {
  const strongest = scenario.stations.reduce((most, each) => (each.transmitW > most.transmitW ? each : most));
  return caution(
    "rf-exposure",
    "RF exposure",
    "A portable antenna hangs low and near: work out the distance for your power, mode, band and antenna (in the US by FCC OET Bulletin 65, elsewhere by the local limits, after ICNIRP), rope it off, and nobody touches the wire or its feed point while anybody sends: it burns.",
    `${strongest.name} sends ${strongest.transmitW} W, ${percent(strongest.sendingShare)} of the time it is busy`,
  );
}

const lightning = () =>
  caution(
    "lightning",
    "Lightning",
    "Stop, disconnect and leave the antennas when you hear thunder; a station on batteries is no safer than any other.",
    null,
  );

function lifting({ bank, sources }: Scenario): Caution {
  const heavy = [bank.bring, ...sources.map((source) => source.bring)]
    .map((bring) => bring?.massKg ?? 0)
    .reduce((most, each) => Math.max(most, each), 0);
  return caution(
    "lifting",
    "Lifting",
    "Banks and generators weigh 25 kg and more: two people or wheels, legs and not back, and never by the leads.",
    heavy >= 20 ? `something of ${heavy} kg` : null,
  );
}
