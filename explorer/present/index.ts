/**
 * present: slides of a notebook and what goes out of the page to a room.
 */
export { OutActs } from "./OutActs.tsx";
export { slidesOf } from "./slides.ts";
