import { For, Show } from "solid-js";
import { type Path, valueAt } from "../../engine/fields/formPath.ts";
import { schemaAt } from "../../engine/fields/formSchema.ts";
import { shownValue } from "../../engine/fields/shownValue.ts";
import type { Problem } from "../../engine/scenario/problem.ts";
import { elementId, useForm, wrongAt } from "./formContext.ts";

/** The triangle that stands before whatever is wrong. */
export function WarningSign() {
  return (
    <svg class="warning" width="14" height="13" viewBox="0 0 14 13" aria-hidden="true">
      <path d="M7 1L13 12H1ZM7 5v3.4M7 9.6v1.2" />
    </svg>
  );
}

/** What is wrong at a place, a sentence each, with the value that was probably meant at hand. */
export function WrongLines(props: { path: Path; problems: readonly Problem[] }) {
  const form = useForm();
  return (
    <div class="wrong-lines" id={elementId(form, props.path, "wrong")} aria-live="polite">
      <For each={props.problems}>
        {(problem) => {
          const wrong = () => wrongAt(form, problem);
          const kept = () => {
            const good = valueAt(form.filled(), problem.path);
            const isLone = typeof good === "number" && problem.code === "not-allowed";
            return isLone
              ? ` Until it is put right, the results keep ${shownValue(good, schemaAt(form.document(), problem.path))}.`
              : "";
          };
          return (
            <p class="wrong">
              <WarningSign /> {wrong().sentence}
              {kept()}
              <Show when={wrong().meant !== null}>
                {" "}
                <button type="button" class="act" onClick={() => form.set(problem.path, wrong().meant)}>
                  Use {shownValue(wrong().meant, schemaAt(form.document(), problem.path))}
                </button>
              </Show>
            </p>
          );
        }}
      </For>
    </div>
  );
}
