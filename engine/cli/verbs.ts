import { actualVerb } from "./actualVerb.ts";
import { checkVerb } from "./checkVerb.ts";
import { completionVerb } from "./completionVerb.ts";
import { driversVerb } from "./driversVerb.ts";
import { explainVerb } from "./explainVerb.ts";
import { gearVerb } from "./gearVerb.ts";
import { learnVerb } from "./learnVerb.ts";
import { ledgerVerb } from "./ledgerVerb.ts";
import { limitsVerb } from "./limitsVerb.ts";
import { newVerb } from "./newVerb.ts";
import { oddsVerb } from "./oddsVerb.ts";
import { packVerb } from "./packVerb.ts";
import { reachVerb } from "./reachVerb.ts";
import { reportVerb } from "./reportVerb.ts";
import { sizeVerb } from "./sizeVerb.ts";
import { spotsVerb } from "./spotsVerb.ts";
import { traceVerb } from "./traceVerb.ts";
import type { Verb } from "./verb.ts";
import { versusVerb } from "./versusVerb.ts";

/** All words of the command line; help, completion and the calls themselves are made from this list. */
export const VERBS: readonly Verb[] = [
  newVerb,
  traceVerb,
  oddsVerb,
  versusVerb,
  sizeVerb,
  driversVerb,
  reachVerb,
  packVerb,
  spotsVerb,
  learnVerb,
  actualVerb,
  limitsVerb,
  ledgerVerb,
  explainVerb,
  checkVerb,
  reportVerb,
  gearVerb,
  completionVerb(() => VERBS),
];
