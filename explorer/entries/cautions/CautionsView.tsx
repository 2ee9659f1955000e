import type { EntryProps } from "../../notebook/entryKind.ts";
import { Cautions } from "./Cautions.tsx";

/** What the model leaves out, what can hurt, and where the weather comes from. */
export function CautionsView(props: EntryProps<"cautions">) {
  const remarks = () => {
    const found = props.page.notebook().scenarios.flatMap(({ id }) => props.page.run(id).result?.remarks ?? []);
    return [...new Set(found)];
  };
  return (
    <div class="margin-left">
      <Cautions remarks={remarks()} />
    </div>
  );
}
