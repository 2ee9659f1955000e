import { type ClimateTables, readClimateTables } from "./climateTables.ts";

/** Fetches both climate files (about 430 kB before compression) when they are first needed. */
export async function loadClimateTables(): Promise<ClimateTables> {
  const [stations, world] = await Promise.all([
    import("./data/climate-stations.json"),
    import("./data/climate-world.json"),
  ]);
  return readClimateTables(stations.default, world.default);
}
