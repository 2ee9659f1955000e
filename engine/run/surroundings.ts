import type { ClimateTables } from "../place/climateTables.ts";
import type { WeatherFile } from "../place/weatherFile.ts";

/** What a scenario needs from outside the document. */
export interface Surroundings {
  /** Climate of the world; needed for typical weather, and for temperature where none is typed in. */
  readonly climate?: ClimateTables;
  /** The weather file that the scenario names, already read. */
  readonly weatherFile?: WeatherFile;
}
