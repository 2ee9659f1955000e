import { For, Show } from "solid-js";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** Changes of a scenario that find no place any more in what it is based on. */
export function LostChanges(props: { page: NotebookPage; scenario: string; baseName: string | null }) {
  const lost = () => props.page.lostChanges(props.scenario);
  return (
    <Show when={lost().length > 0}>
      <div class="wrongs no-print">
        <p class="wrong">What these changes were made to is no longer in {props.baseName}:</p>
        <ul>
          <For each={lost()}>
            {({ number, message }) => (
              <li>
                {message}{" "}
                <button type="button" class="act" onClick={() => props.page.forgetChange(props.scenario, number)}>
                  Drop this change
                </button>
              </li>
            )}
          </For>
        </ul>
      </div>
    </Show>
  );
}
