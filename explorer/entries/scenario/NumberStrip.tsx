import { Index } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { pattern, valueAt } from "../../../engine/fields/formPath.ts";
import { problemsAt, useForm } from "../../parts/formContext.ts";
import { Control } from "./Control.tsx";
import { FieldRow } from "./FieldRow.tsx";
import { type ListProps, makeList } from "./makeList.ts";
import { UsualAct } from "./UsualAct.tsx";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** One figure for each month or hour, in a grid. */
export function NumberStrip(props: ListProps) {
  const form = useForm();
  const list = makeList(() => props.path);
  const label = () => fieldLabel(pattern(props.path));
  const name = (index: number) =>
    list().length === 12 ? MONTHS[index] : `${String(index).padStart(2, "0")}–${String(index + 1).padStart(2, "0")}`;
  return (
    <FieldRow
      path={props.path}
      node={{ description: props.node.description ?? "" }}
      isOptional={props.isOptional}
      within={true}
    >
      <div class="strip">
        <Index each={list()}>
          {(_, index) => (
            <span class="strip-cell">
              <span class="strip-name">{name(index)}</span>
              <Control
                path={[...props.path, index]}
                node={props.node.items!}
                label={`${label()}, ${name(index)}`}
                isOptional={valueAt(form.document(), props.path) === undefined}
                isWrong={problemsAt(form, [...props.path, index], false).length > 0}
              />
            </span>
          )}
        </Index>
      </div>
      <UsualAct {...props} />
    </FieldRow>
  );
}
