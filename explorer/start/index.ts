/**
 * start: a plan from six questions: place, time, stations, power, shade.
 */

export { notebookFromScenario, notebookOf } from "./notebookOf.ts";
export { StartQuestions } from "./StartQuestions.tsx";
