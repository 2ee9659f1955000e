import { For } from "solid-js";
import type { RunPicture } from "../../../engine/answers/run/runPicture.ts";
import { figure } from "../../../engine/words/numbers.ts";

/** Where the energy went, largest first; each bar is its share, dots for what is always on and lines for what is used. */
export function LedgerTable(props: { picture: RunPicture }) {
  const ledger = () => props.picture.ledger;
  const most = () => Math.max(1, ...ledger().loads.map((line) => line.totalWh));
  const barPx = (wh: number) => (wh / most()) * 216;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="Table of loads">
      <table class="ledger">
        <caption class="unseen">What each load got over the whole event, largest first</caption>
        <thead>
          <tr>
            <th scope="col">What took it</th>
            <th scope="col">Always on, Wh</th>
            <th scope="col">When used, Wh</th>
            <th scope="col">Together, Wh</th>
            <th scope="col">Share, %</th>
            <td class="bar-cell" />
          </tr>
        </thead>
        <tbody>
          <For each={ledger().loads}>
            {(line) => (
              <tr>
                <th scope="row">{line.name}</th>
                <td>{figure(line.alwaysWh)}</td>
                <td>{figure(line.usedWh)}</td>
                <td class="sum">{figure(line.totalWh)}</td>
                <td>{figure(line.share * 100)}</td>
                <td class="bar-cell">
                  <svg width="216" height="14" aria-hidden="true">
                    <rect class="part part-load-dots" width={barPx(line.alwaysWh)} y="1" height="12" />
                    <rect
                      class="part part-load-lines"
                      x={barPx(line.alwaysWh)}
                      width={barPx(line.usedWh)}
                      y="1"
                      height="12"
                    />
                  </svg>
                </td>
              </tr>
            )}
          </For>
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All that the loads got</th>
            <td>{figure(ledger().alwaysWh)}</td>
            <td>{figure(ledger().usedWh)}</td>
            <td class="sum">{figure(ledger().alwaysWh + ledger().usedWh)}</td>
            <td>100</td>
            <td class="bar-cell" />
          </tr>
        </tfoot>
      </table>
    </section>
  );
}
