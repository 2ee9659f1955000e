import { wrapLongitudeDeg } from "../angle.ts";
import { seedWords } from "../chance/stream.ts";
import { climateAt, type SiteClimate } from "../place/climateAt.ts";
import { CANOPY_REACH, figureSpread, SURENESS_SPREAD } from "../run/memberFigures.ts";
import { type CrownFactors, type Prepared, prepare, skyParts } from "../run/prepare.ts";
import { turbidityOf } from "../run/prepareSky.ts";
import { prepareEachTime, type Reuse } from "../run/reuse.ts";
import { isMeanTyped, statedClearness } from "../run/statedClearness.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { dayLight } from "../sky/dayClearIndex.ts";
import type { KnownDay } from "../sky/knownDays.ts";
import { type PreparedSkies, prepareBlockSkies, prepareSkyEnsemble, type SkyClimate } from "../sky/skyEnsemble.ts";
import { type PreparedOperators, prepareOperators } from "./operators.ts";

/** A scenario ready for many runs. Holds scratch of the last member drawn: one of these for each thread. */
export interface PreparedEnsemble {
  readonly prepared: Prepared;
  /** What the scenario was prepared with, for workers that prepare it again. */
  readonly surroundings: Surroundings;
  readonly seed: string;
  readonly words: Int32Array;
  readonly skies: PreparedSkies;
  readonly operators: PreparedOperators;
  readonly spread: Float64Array;
  /** Whether crowns that let light through stand by panels: then how dense they are is a figure of each member's own. */
  readonly hasCrowns: boolean;
  readonly remarks: readonly string[];
}

/** The same in every month. */
const monthly = (value: number) => Array.from({ length: 12 }, () => value);

/** What skies are drawn from: as stated, and the rest from the tables. */
function skyClimate(scenario: Scenario, climate: SiteClimate | null): SkyClimate {
  const { air } = scenario.weather;
  const tmaxC = air === undefined ? climate!.tmaxC : monthly(air.maxC);
  const tminC = air === undefined ? climate!.tminC : monthly(air.minC);
  return { ...statedClearness(scenario, climate), tmaxC, tminC };
}

/**
 * Prepares a scenario for an ensemble: the weather it states gives way to skies drawn from the climate of the place (or, where
 * it names a weather file, from that file in blocks of days); days in words are taken as a forecast as sure as its lead time allows.
 * @param seed any text: the same seed gives the same members
 * @param reuse keeps what other scenarios share, for one thread; left out, everything is prepared from scratch
 */
export function prepareEnsemble(
  scenario: Scenario,
  surroundings: Surroundings,
  seed: string,
  reuse: Reuse = prepareEachTime,
): { ok: true; ensemble: PreparedEnsemble } | { ok: false; problems: readonly Problem[] } {
  const throughFactors = crownFactors(scenario);
  const ready = prepare(scenario, surroundings, reuse, throughFactors);
  if (!ready.ok) return ready;
  const { prepared } = ready;
  const { grid, clear } = prepared;
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  const { latitudeDeg, elevationM } = scenario.place;
  const site = { latitudeDeg, longitudeDeg, elevationM, linkeTurbidity: turbidityOf(scenario, grid) };
  const underSky = skyParts(scenario, surroundings);
  const days = reuse("days", underSky, () => dayLight(site, grid.middleMs, grid.localDay));
  const tables = surroundings.climate;
  const climate =
    tables === undefined
      ? null
      : reuse("climate", underSky, () => climateAt(tables, latitudeDeg, longitudeDeg, elevationM));
  const words = seedWords(seed);
  let ktErrorRms = 0; // of figures that somebody typed in, no error is known
  const remarks = [...prepared.remarks];
  let skies: PreparedSkies;
  if (scenario.weather.kind === "file") {
    const typed = scenario.weather.air;
    const drawn = climate?.ok ? { tmaxC: climate.climate.tmaxC, tminC: climate.climate.tminC } : undefined;
    const air = typed === undefined ? drawn : { tmaxC: monthly(typed.maxC), tminC: monthly(typed.minC) };
    const found = reuse("skies from a file", underSky, () =>
      prepareBlockSkies({
        site,
        grid,
        clear,
        days,
        // Air that somebody typed in goes before the file's, as in a single run.
        file: typed === undefined ? surroundings.weatherFile! : { ...surroundings.weatherFile!, tempC: null },
        ...(air === undefined ? {} : { air }),
        ...(typed === undefined ? {} : { warmestSolarHour: typed.warmestSolarHour }),
      }),
    );
    if (!found.ok) return found;
    skies = found.skies;
  } else {
    const isTyped = isMeanTyped(scenario);
    if (!isTyped || scenario.weather.air === undefined) {
      if (climate === null) {
        const message =
          "weather needs the climate tables to draw skies from, and none were given; load the tables, or type in monthly clearness and weather.air.";
        return { ok: false, problems: [{ code: "no-climate", path: ["weather"], message }] };
      }
      if (!climate.ok) return climate;
      if (!isTyped) ktErrorRms = climate.climate.provenance.ktRms;
      if (!remarks.includes(climate.climate.provenance.sentence)) remarks.push(climate.climate.provenance.sentence);
    }
    const known = knownDays(scenario, grid.dates);
    skies = reuse("skies", [underSky, known], () =>
      prepareSkyEnsemble({
        site,
        grid,
        clear,
        days,
        climate: skyClimate(scenario, climate?.ok ? climate.climate : null),
        ktErrorRms,
        knownDays: known,
        ...(scenario.weather.air === undefined ? {} : { warmestSolarHour: scenario.weather.air.warmestSolarHour }),
      }),
    );
  }
  const spread = figureSpread(scenario.sureness);
  return {
    ok: true,
    ensemble: {
      prepared,
      surroundings,
      seed,
      words,
      skies,
      operators: reuse("operators", [seed, scenario.operators, scenario.gear, scenario.stations, underSky], () =>
        prepareOperators(prepared, words),
      ),
      spread,
      hasCrowns: throughFactors.length > 1 && prepared.groups.length > 0,
      remarks,
    },
  };
}

/** What is known of each day: named days first, else the words of a scenario whose weather is told in words. */
export function knownDays(scenario: Scenario, dates: readonly string[]): (KnownDay | null)[] {
  const { weather } = scenario;
  return dates.map((date, day) => {
    const named = scenario.knownDays.find((known) => known.date === date);
    if (named !== undefined) {
      return named.sureness === undefined ? { word: named.sky } : { word: named.sky, sureness: named.sureness };
    }
    const word = weather.kind === "words" ? weather.days[day] : undefined;
    return word === undefined ? null : { word };
  });
}

/** How much more light than planned crowns let through as planned, two spreads darker and two spreads lighter; as planned alone where none lets any. */
function crownFactors({ obstacles, sureness }: Scenario): CrownFactors {
  const hasCrowns = obstacles.some(
    (tree) => tree.kind === "tree" && (tree.transmittanceInLeafShare > 0 || tree.transmittanceBareShare > 0),
  );
  if (!hasCrowns) return [1];
  const reach = CANOPY_REACH * SURENESS_SPREAD.canopy[sureness.canopy];
  return [1, Math.max(0, 1 - reach), 1 + reach];
}
