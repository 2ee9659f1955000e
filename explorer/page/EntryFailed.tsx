import { createEffect, on } from "solid-js";

const wordsOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

/** Stands in the place of an entry that cannot be shown; the rest of the sheet goes on, and the next edit tries again. */
export function EntryFailed(props: { error: unknown; again: () => void; edited: () => unknown }) {
  createEffect(on(props.edited, () => props.again(), { defer: true }));
  return (
    <div class="margin-left" role="alert">
      <p class="wrong">
        This entry cannot be shown ({wordsOf(props.error)}). Nothing of it is lost; the other entries go on without it.
      </p>
      <p class="acts-row no-print">
        <button type="button" class="act" onClick={() => props.again()}>
          Try again
        </button>
      </p>
    </div>
  );
}
