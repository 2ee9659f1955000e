import type { EntryProps } from "../../notebook/entryKind.ts";
import { Cautions } from "./Cautions.tsx";

/** What the model leaves out, what can hurt, and where the weather comes from. */
export function CautionsView(props: EntryProps<"cautions">) {
  const remarks = () => {
    const { scenarios } = props.page.notebook();
    const notes = scenarios.flatMap(({ id }) => props.page.document(id)?.note ?? []);
    const found = scenarios.flatMap(({ id }) => props.page.run(id).result?.remarks ?? []);
    return [...new Set([...notes, ...found])];
  };
  return (
    <div class="margin-left">
      <Cautions remarks={remarks()} />
    </div>
  );
}
