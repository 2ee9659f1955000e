/**
 * charts: pictures on the page: a question's drawing as it goes into files, and over it what moves (reading line, grip, drag, focus).
 */
export { Drawn } from "./Drawn.tsx";
export { DrawnPicture } from "./DrawnPicture.tsx";
export { DrawnAxis, DrawnNames, DrawnPlot } from "./DrawnPieces.tsx";
export { layPatterns } from "./layPatterns.ts";
export { RulerChart } from "./RulerChart.tsx";
export { Strata } from "./Strata.tsx";
export { TimeRuler } from "./TimeRuler.tsx";
