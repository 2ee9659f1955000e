import { For } from "solid-js";
import { allLoads, LOADS } from "../../../engine/answers/ledger/rows.ts";
import type { RunPicture } from "../../../engine/answers/run/runPicture.ts";

/** Where the energy went, largest first; each bar is its share, dots for what is always on and lines for what is used. */
export function LedgerTable(props: { picture: RunPicture }) {
  const ledger = () => props.picture.ledger;
  const most = () => Math.max(1, ...ledger().loads.map((line) => line.totalWh));
  const sum = () => allLoads(ledger());
  const barPx = (wh: number) => (wh / most()) * 216;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="Table of loads">
      <table class="ledger">
        <caption class="unseen">What each load got over the whole event, largest first</caption>
        <thead>
          <tr>
            <th scope="col">{LOADS.name.head}</th>
            <th scope="col">{LOADS.always.head}</th>
            <th scope="col">{LOADS.used.head}</th>
            <th scope="col">{LOADS.total.head}</th>
            <th scope="col">{LOADS.share.head}</th>
            <td class="bar-cell" />
          </tr>
        </thead>
        <tbody>
          <For each={ledger().loads}>
            {(line) => (
              <tr>
                <th scope="row">{LOADS.name.cell(line)}</th>
                <td>{LOADS.always.cell(line)}</td>
                <td>{LOADS.used.cell(line)}</td>
                <td class="sum">{LOADS.total.cell(line)}</td>
                <td>{LOADS.share.cell(line)}</td>
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
            <th scope="row">{LOADS.name.cell(sum())}</th>
            <td>{LOADS.always.cell(sum())}</td>
            <td>{LOADS.used.cell(sum())}</td>
            <td class="sum">{LOADS.total.cell(sum())}</td>
            <td>{LOADS.share.cell(sum())}</td>
            <td class="bar-cell" />
          </tr>
        </tfoot>
      </table>
    </section>
  );
}
