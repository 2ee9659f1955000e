/**
 * single: the page as one file: what else comes by the network is inside.
 */
export { startInside } from "./startInside.ts";
