/**
 * start: the few questions that a plan starts from, what is usual where nobody answers, and the scenario that the answers describe.
 */
export { COMMON_GEAR, gearSays, WHEN } from "./commonGear.ts";
export {
  BACKUP,
  CHEMISTRY,
  CONTROLLERS,
  defaultAnswers,
  HOURS,
  KEENNESS,
  MODES,
  PLACING,
  RADIOS,
  ratedWOf,
  SHADE,
  type StartAnswers,
  startScenario,
} from "./startScenario.ts";
