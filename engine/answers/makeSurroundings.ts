import type { WeatherFile } from "../place/weatherFile.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { SizeWish } from "../size/sizeAxis.ts";
import { climateOf } from "./climateOf.ts";

/** The text of a weather file that a notebook keeps, by the name that scenarios call it by. */
export interface WeatherText {
  readonly name: string;
  readonly text: string;
}

/**
 * Where a scenario's weather comes from: the climate tables of its place, and the file that it names if the notebook keeps it. The
 * tables of a place are the same ones every time: what was prepared with them is kept by them, and an edit prepares only what it touches.
 */
export function makeSurroundings() {
  const read = new Map<string, WeatherFile>();
  return async (
    scenario: Scenario,
    files: readonly WeatherText[],
    axes: readonly (SizeWish | null)[] = [],
  ): Promise<Surroundings> => {
    const climate = await climateOf(
      [scenario],
      axes.flatMap((axis) => axis?.at ?? []),
    );
    if (scenario.weather.kind !== "file") return { climate };
    const { file: name } = scenario.weather;
    let weatherFile = read.get(name);
    if (weatherFile === undefined) {
      const { readWeatherFile } = await import("../place/readWeatherFile.ts");
      const kept = files.find((each) => each.name === name);
      const found = kept === undefined ? null : readWeatherFile(kept.text, name);
      if (found?.ok !== true) return { climate };
      weatherFile = found.file;
      read.set(name, weatherFile);
    }
    return { climate, weatherFile };
  };
}
