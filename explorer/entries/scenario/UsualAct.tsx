import { Show } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { type Path, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import { useForm } from "../../parts/formContext.ts";

/** Gives a list back to what is usual. */
export function UsualAct(props: { path: Path; isOptional: boolean }) {
  const form = useForm();
  return (
    <Show when={props.isOptional && props.path.length > 1 && valueAt(form.document(), props.path) !== undefined}>
      <button
        type="button"
        class="act"
        aria-label={`As usual: ${fieldLabel(pattern(props.path))}`}
        onClick={() => form.clear(props.path)}
      >
        as usual
      </button>
    </Show>
  );
}
