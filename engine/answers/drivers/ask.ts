import type { AnswersPage } from "../answersPage.ts";
import type { Asked } from "../asked.ts";
import type { Found } from "../found.ts";
import type { DriversPicture } from "./driversPicture.ts";

/** What a scenario's outcome depends on. */
export const askDrivers = (scenario: string): Asked<DriversPicture> => ({ kind: "drivers", doc: { scenario } });

/** What is known of what decides it. */
export const driversOf = (page: Pick<AnswersPage, "find">, scenario: string): Found<DriversPicture> =>
  page.find(askDrivers(scenario));
