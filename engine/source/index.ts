/**
 * source: what charges the bank besides the sun. Mains charger, generator and vehicle charger ─► prepareSources ─► limits and
 * hours on the step grid; the step in `run` decides when a generator runs. Reads scenario; read by run.
 */
export { type PreparedSource, prepareSources } from "./prepareSources.ts";
