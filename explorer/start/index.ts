/**
 * start: a plan from six questions: place, time, stations, power, shade.
 */

export { COMMON_GEAR } from "./commonGear.ts";
export { notebookFromScenario, notebookOf } from "./notebookOf.ts";
export { StartQuestions } from "./StartQuestions.tsx";
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
  SHADE,
  type StartAnswers,
  startScenario,
} from "./startScenario.ts";
