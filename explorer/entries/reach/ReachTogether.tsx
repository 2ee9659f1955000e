import { For, Show } from "solid-js";
import { partWords, priceHead } from "../../../engine/answers/reach/reachWords.ts";
import { TOGETHER } from "../../../engine/answers/reach/rows.ts";
import { REACH_ORDERS } from "../../../engine/reach/reachOrder.ts";
import type { ReachWay } from "../../../engine/reach/reachReport.ts";
import { PriceCell } from "./PriceCell.tsx";

/** Several levers together, best first. */
export function ReachTogether(props: {
  title: string;
  rows: readonly ReachWay[];
  prefix: string;
  chosen: () => string | null;
  onChoose: (key: string) => void;
}) {
  return (
    <Show when={props.rows.length > 0}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label={props.title}>
        <table class="reach-table reach-together">
          <caption class="unseen">{props.title}: none of them can be smaller</caption>
          <tbody>
            <tr class="reach-head">
              <th scope="col">{props.title}</th>
              <th scope="col">{TOGETHER.holds.head}</th>
              <For each={REACH_ORDERS}>{(order) => <th scope="col">{priceHead(order)}</th>}</For>
            </tr>
            <For each={props.rows}>
              {(row, k) => (
                <tr aria-selected={props.chosen() === `${props.prefix} ${k()}`}>
                  <th scope="row">
                    <button type="button" class="reach-name" onClick={() => props.onChoose(`${props.prefix} ${k()}`)}>
                      <For each={row.parts}>
                        {(part, p) => (
                          <span class="reach-part">
                            {p() > 0 ? "+ " : ""}
                            {partWords(part)}
                          </span>
                        )}
                      </For>
                    </button>
                  </th>
                  <td class="sum">{TOGETHER.holds.cell(row)}</td>
                  <For each={REACH_ORDERS}>{(order) => <PriceCell price={row.price} order={order} />}</For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
}
