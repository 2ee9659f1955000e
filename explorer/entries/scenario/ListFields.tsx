import { createMemo, Match, Show, Switch } from "solid-js";
import { valueAt } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import { useForm } from "../../parts/formContext.ts";
import { AskedList } from "./AskedList.tsx";
import { ChangeFields } from "./ChangeFields.tsx";
import type { ListProps } from "./makeList.ts";
import { NameTicks } from "./NameTicks.tsx";
import { NumberStrip } from "./NumberStrip.tsx";
import { ShortLines } from "./ShortLines.tsx";
import { Things } from "./Things.tsx";
import { WordLines } from "./WordLines.tsx";

/** A list of the document: things with names of their own, short lines, single words, or one figure an hour or a month. */
export function ListFields(props: ListProps) {
  const form = useForm();
  const kind = createMemo(() => kindOf(props.node));
  const written = () => valueAt(form.document(), props.path) as unknown[] | undefined;
  const isAsked = () =>
    props.isOptional && props.node.default === undefined && written() === undefined && props.path.length > 1;
  return (
    <Show when={!isAsked()} fallback={<AskedList {...props} />}>
      <Switch>
        <Match when={kind() === "strip"}>
          <NumberStrip {...props} />
        </Match>
        <Match when={kind() === "ticks"}>
          <NameTicks {...props} />
        </Match>
        <Match when={kind() === "words"}>
          <WordLines {...props} />
        </Match>
        <Match when={kind() === "lines"}>
          <ShortLines {...props} />
        </Match>
        <Match when={kind() === "changes"}>
          <ChangeFields path={props.path} node={props.node} />
        </Match>
        <Match when={kind() === "things"}>
          <Things {...props} />
        </Match>
      </Switch>
    </Show>
  );
}

function kindOf(node: SchemaNode): string {
  const item = node.items!;
  if (item.quantity !== undefined) return "strip";
  if (item.refersTo !== undefined && node.isOrdered !== true) return "ticks";
  if (item.properties?.at !== undefined && item.properties.remove !== undefined) return "changes";
  if (item.properties === undefined && item.oneOf === undefined) return "words";
  const fields = Object.values(item.properties ?? {});
  const isShort =
    item.oneOf === undefined && fields.length <= 4 && fields.every((field) => field.properties === undefined);
  return isShort && item.properties?.id === undefined ? "lines" : "things";
}
