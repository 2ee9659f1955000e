/** The table of zones by position, as everything but the explorer's build takes it; there it is `zoneTableLater`. */
export { default as zoneAt } from "@photostructure/tz-lookup";
