import { Show } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { type Path, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import { elementId, problemsAt, useForm } from "../../parts/formContext.ts";
import { Control } from "./Control.tsx";
import { FieldRow } from "./FieldRow.tsx";

type Draw = { drawW?: number; drawA?: number; atV?: number };

const tidy = (value: number) => Number(value.toPrecision(4));

/** A draw in watts, or in amperes with the voltage at which it was measured. Changing the unit keeps the power. */
export function DrawRow(props: { path: Path; node: SchemaNode; isOptional: boolean }) {
  const form = useForm();
  const written = () => valueAt(form.document(), props.path) as Draw | undefined;
  const draw = () => written() ?? (valueAt(form.filled(), props.path) as Draw | undefined) ?? {};
  const inA = () => draw().drawW === undefined && draw().drawA !== undefined;
  const label = () => fieldLabel(pattern(props.path));
  const key = () => (inA() ? "drawA" : "drawW");
  const wrongs = () => problemsAt(form, props.path, true);
  const toAmperes = (isA: boolean) => {
    const now = draw();
    if (isA === inA()) return;
    const watts = Number(now.drawW ?? Number(now.drawA) * Number(now.atV));
    const safe = Number.isFinite(watts) ? watts : 0;
    form.set(props.path, isA ? { drawA: tidy(safe / 13.8), atV: 13.8 } : { drawW: tidy(safe) });
  };
  const describedBy = () =>
    `${wrongs().length > 0 ? `${elementId(form, props.path, "wrong")} ` : ""}${elementId(form, props.path, "why")}`;
  return (
    <FieldRow path={props.path} node={props.node} isOptional={props.isOptional} within={true}>
      <Control
        path={[...props.path, key()]}
        node={bare(props.node.properties![key()]!)}
        label={label()}
        isOptional={written() === undefined}
        isWrong={wrongs().length > 0}
        describedBy={describedBy()}
      />
      <select
        class="box box-unit"
        aria-label={`${label()}, unit`}
        onChange={(event) => toAmperes(event.currentTarget.value === "A")}
      >
        <option value="W" selected={!inA()}>
          W
        </option>
        <option value="A" selected={inA()}>
          A at
        </option>
      </select>
      <Show when={inA()}>
        <Control
          path={[...props.path, "atV"]}
          node={props.node.properties!.atV!}
          label={`${label()}, measured at`}
          isOptional={false}
          isWrong={wrongs().some((problem) => problem.path.at(-1) === "atV")}
        />
      </Show>
      <Show when={props.isOptional && written() !== undefined}>
        <button
          type="button"
          class="act act-usual"
          aria-label={`As usual: ${label()}`}
          onClick={() => form.clear(props.path)}
        >
          as usual
        </button>
      </Show>
    </FieldRow>
  );
}

/** The list of units beside it says the unit, so the field need not. */
function bare(node: SchemaNode): SchemaNode {
  return { ...node, quantity: { ...node.quantity!, unit: "" } };
}
