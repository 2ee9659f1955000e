/** Why the browser did not keep a notebook, in a sentence. */
export function whyUnkept(error: unknown): string {
  const isFull = error instanceof DOMException && error.name === "QuotaExceededError";
  const why = isFull
    ? "There is no room left for it in this browser"
    : `It could not be kept (${error instanceof Error ? error.message : String(error)})`;
  return `${why}: delete a notebook from the shelf, or save this one as a file before you leave.`;
}
