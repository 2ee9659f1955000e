import { createEffect, createMemo, createSignal } from "solid-js";
import { type ClimateTables, climateAt, loadClimateNear } from "../../engine/place/index.ts";
import { wrapped } from "./mapView.ts";

interface Place {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
}

/** Which climate a place has, in words, and the stations that it comes from; its tables are fetched when the place moves. */
export function makePlaceClimate(of: Place) {
  const place = createMemo(
    () => {
      const isHere = Math.abs(of.latitudeDeg) <= 90 && Math.abs(of.longitudeDeg) <= 360;
      return isHere ? { lat: of.latitudeDeg, lon: wrapped(of.longitudeDeg) } : null;
    },
    undefined,
    { equals: (a, b) => a?.lat === b?.lat && a?.lon === b?.lon },
  );
  /** The tables of the place that they were fetched for; "failed" where they could not be. */
  const [tables, setTables] = createSignal<{ at: ReturnType<typeof place>; found: ClimateTables | "failed" }>();
  createEffect(() => {
    const at = place();
    if (at === null) return;
    const take = (found: ClimateTables | "failed") => at === place() && setTables({ at, found });
    loadClimateNear([at]).then(take, () => take("failed"));
  });
  const here = () => (tables()?.at === place() ? tables()?.found : undefined);
  const climate = createMemo(() => {
    const at = place();
    const found = here();
    if (at === null || found === undefined || found === "failed") return null;
    return { ...climateAt(found, at.lat, at.lon, of.elevationM), stations: found.stations };
  });
  /** "latitude longitude" of each station that is listened to. */
  const heard = createMemo(() => {
    const found = climate();
    if (!found?.ok) return [];
    const names = found.climate.provenance.nearestStations.map((station) => station.name);
    return found.stations.filter(({ name }) => names.includes(name)).map(({ lat, lon }) => `${lat} ${lon}`);
  });
  const source = () => {
    const found = climate();
    if (here() === "failed") return "The climate tables could not be loaded; the place can be picked all the same.";
    if (found === null) return "The climate of the place is on its way.";
    return found.ok ? found.climate.provenance.sentence : found.problems[0]!.message;
  };
  return { heard, source };
}
