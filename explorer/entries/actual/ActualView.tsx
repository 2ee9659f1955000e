import type { EntryProps } from "../../notebook/entryKind.ts";

export function ActualView(props: EntryProps<"actual">) {
  return <p class="margin-left">{props.doc.log?.name ?? ""}</p>;
}
