import { For } from "solid-js";
import { CAUTIONS, LEFT_OUT, NO_PERMIT } from "./cautionWords.ts";

/** What a plan is not, and what can hurt somebody who carries it out. */
export function Cautions(props: { remarks: readonly string[] }) {
  return (
    <footer class="cautions">
      <p>
        <strong>{NO_PERMIT.head}</strong> {NO_PERMIT.rest}
      </p>
      <ul>
        <For each={CAUTIONS}>{(caution) => <li>{caution}</li>}</For>
      </ul>
      <p>{LEFT_OUT}</p>
      <For each={props.remarks}>{(remark) => <p>{remark}</p>}</For>
    </footer>
  );
}
