import { createMemo, createResource } from "solid-js";
import { runOf } from "../../../engine/answers/run/ask.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";
import { Cautions } from "./Cautions.tsx";

/** What the model leaves out, what can hurt, and where the weather comes from. */
export function CautionsView(props: EntryProps<"cautions">) {
  // Fetched after the first answer: they need the whole format.
  const [words] = createResource(() =>
    firstAnswer.then(() => import("../../../engine/answers/cautions/cautionsOf.ts")),
  );
  const documents = () => props.page.notebook().scenarios.flatMap(({ id }) => props.page.document(id) ?? []);
  const cautions = createMemo(() => words()?.cautionsOf(documents()) ?? null);
  const remarks = () => {
    const { scenarios } = props.page.notebook();
    const notes = documents().flatMap(({ note }) => note ?? []);
    const found = scenarios.flatMap(({ id }) => runOf(props.page, id).result?.remarks ?? []);
    return [...new Set([...notes, ...found])];
  };
  return (
    <div class="margin-left">
      <Cautions cautions={cautions()} remarks={remarks()} />
    </div>
  );
}
