import { EngineFault } from "../fault.ts";

type ZoneAt = (latitudeDeg: number, longitudeDeg: number) => string;

let table: ZoneAt | null = null;

/** Takes the table of zones, which is 30 kB of gzip and needed only for a place that does not say its zone. */
export function keepZoneTable(fetched: ZoneAt): void {
  table = fetched;
}

/** @throws EngineFault as long as nobody has fetched the table */
export function zoneAt(latitudeDeg: number, longitudeDeg: number): string {
  if (table === null) throw new EngineFault("the table of zones is asked before it is here");
  return table(latitudeDeg, longitudeDeg);
}
