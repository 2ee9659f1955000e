import { createMemo, For } from "solid-js";
import { type ChainRow, voltChain } from "../../../engine/answers/limits/voltChain.ts";
import type { RadioAtPeak } from "../../../engine/checks/limits.ts";
import { figure, volts } from "../../../engine/words/numbers.ts";

const BAR_PX = 112;

/** What the way from the bank to one radio takes of the volts, link by link; the weak link is filled and named. */
export function VoltChain(props: { radio: RadioAtPeak; openV: number }) {
  const chain = createMemo(() => voltChain(props.radio, props.openV));
  const leastPx = () => chain().place(props.radio.minimumV) * BAR_PX;
  const says = ({ kind, fromV, toV }: ChainRow) =>
    kind === "bank" || kind === "radio" ? volts(toV) : `${figure(toV - fromV, 2)} V`;
  return (
    <table class="chain">
      <caption>
        {props.radio.name}: {volts(props.radio.radioV)}, needs {volts(props.radio.minimumV)}
      </caption>
      <thead class="unseen">
        <tr>
          <th scope="col">Link</th>
          <td />
          <th scope="col">Volts there, or lost in it</th>
        </tr>
      </thead>
      <tbody>
        <For each={chain().rows}>
          {(row) => (
            <tr class={`chain-${row.kind}`}>
              <th scope="row">
                {row.name}
                {row.kind === "weak" ? " (weak link)" : ""}
              </th>
              <td class="bar-cell">
                <svg width={BAR_PX} height="24" aria-hidden="true">
                  <ChainBar row={row} place={chain().place} />
                  <path class="chain-least" d={`M${leastPx()} 0V24`} />
                </svg>
              </td>
              <td>{says(row)}</td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}

function ChainBar(props: { row: ChainRow; place: (volts: number) => number }) {
  const isWhole = () => props.row.kind === "bank" || props.row.kind === "radio";
  const from = () => (isWhole() ? 0 : props.place(props.row.toV) * BAR_PX);
  const to = () => props.place(props.row.fromV) * BAR_PX;
  return <rect class="chain-bar" x={from()} y="5" width={Math.max(2, to() - from())} height="14" />;
}
