import { For } from "solid-js";

const KEYS = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "⌫"] as const;
const MOST_CHARACTERS = 7;

/** Digits under the thumb, so that a charge takes two taps and saving it a third. */
export function ReadingKeys(props: { value: string; onType: (text: string) => void }) {
  const press = (key: (typeof KEYS)[number]) => {
    if (key === "⌫") props.onType(props.value.slice(0, -1));
    else if (props.value.length < MOST_CHARACTERS) props.onType(props.value + key);
  };
  return (
    <fieldset class="reading-keys">
      <legend class="unseen">Digits</legend>
      <For each={KEYS}>
        {(key) => (
          <button
            type="button"
            aria-label={key === "⌫" ? "Take back the last digit" : undefined}
            onClick={() => press(key)}
          >
            {key}
          </button>
        )}
      </For>
    </fieldset>
  );
}
