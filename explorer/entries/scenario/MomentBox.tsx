import { valueAt } from "../../../engine/fields/formPath.ts";
import { elementId, useForm } from "../../parts/formContext.ts";
import type { ControlProps } from "./controlProps.ts";

/** Local date and time; a year that is still being typed is not yet a date. */
export function MomentBox(props: ControlProps) {
  const form = useForm();
  const value = () => String(valueAt(form.document(), props.path) ?? "");
  return (
    <input
      class="box box-moment"
      type="datetime-local"
      id={elementId(form, props.path)}
      aria-label={props.label}
      aria-invalid={props.isWrong ? "true" : undefined}
      aria-describedby={props.describedBy || undefined}
      value={value()}
      onChange={(event) => {
        const typed = event.currentTarget.value.slice(0, 16);
        if (/^(19|2\d)\d\d-/.test(typed) && typed !== value()) form.set(props.path, typed);
      }}
    />
  );
}
