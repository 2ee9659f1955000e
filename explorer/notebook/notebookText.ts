import { LONGEST_TEXT } from "../../engine/answers/notebookLimits.ts";

/** A notebook as a file: indented for whoever looks into it, unless it would grow too long to be read again. */
export function notebookText(notebook: unknown): string {
  const indented = JSON.stringify(notebook, null, 2);
  return `${indented.length < LONGEST_TEXT ? indented : JSON.stringify(notebook)}\n`;
}
