import { atNextFrame } from "./atNextFrame.ts";

let tell = () => {};
let isTold = false;

/** Comes when the page's first answer is to be seen, or somebody moves down the page: then what lies further down is fetched too. */
export const firstAnswer = new Promise<void>((resolve) => {
  tell = resolve;
});

/** Says that nothing that the first answer needs is still to be fetched; the answer is painted before anything else is. */
export function tellFirstAnswer(): void {
  if (isTold) return;
  isTold = true;
  atNextFrame(() => setTimeout(tell));
}
