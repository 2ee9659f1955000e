import { For } from "solid-js";
import type { Miss } from "../../../engine/actual/planAgainstActual.ts";
import { partsOf, points } from "../../../engine/answers/actual/actualWords.ts";
import { energy, figure } from "../../../engine/words/numbers.ts";

const BAR_PX = 216;

/** What of the miss each part made, in points of charge, with the interval that holds it 19 times in 20. */
export function MissTable(props: { miss: Miss; title: string }) {
  const parts = () => partsOf(props.miss);
  const most = () => Math.max(0.01, ...parts().map(({ share, spread }) => Math.abs(share) + 2 * spread));
  const px = (share: number) => BAR_PX / 2 + (share / most()) * (BAR_PX / 2);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label={props.title}>
      <table class="miss-table">
        <caption>{props.title}</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <td class="bar-cell" />
            <th scope="col">Points</th>
            <th scope="col">±</th>
            <th scope="col">Energy</th>
          </tr>
        </thead>
        <tbody>
          <For each={parts()}>
            {(part) => (
              <tr>
                <th scope="row">{part.title}</th>
                <td class="bar-cell">
                  <svg width={BAR_PX} height="24" aria-hidden="true">
                    <line class="axis-line" x1={px(0)} x2={px(0)} y1="0" y2="24" />
                    <rect
                      class={part.name === "rest" ? "miss-rest" : "miss-bar"}
                      x={Math.min(px(0), px(part.share))}
                      y="6"
                      width={Math.abs(px(part.share) - px(0))}
                      height="12"
                    />
                    <path
                      class="miss-interval"
                      d={`M${px(part.share - 2 * part.spread)} 12H${px(part.share + 2 * part.spread)}`}
                    />
                  </svg>
                </td>
                <td class="sum">{points(part.share)}</td>
                <td>{figure(200 * part.spread, 1)}</td>
                <td>{energy(part.wh)}</td>
              </tr>
            )}
          </For>
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All together</th>
            <td class="bar-cell" />
            <td class="sum">{points(props.miss.share)}</td>
            <td />
            <td>{energy(props.miss.wh)}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}
