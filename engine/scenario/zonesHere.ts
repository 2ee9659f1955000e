import zoneAtPosition from "@photostructure/tz-lookup";
import { keepZoneTable } from "./zoneTableLater.ts";

// Whatever on the page reads a scenario imports this file, which brings the table of zones along; the first answer does without it, unless
// a place does not say its zone.
keepZoneTable(zoneAtPosition);
