import { For } from "solid-js";
import { hourRows } from "../download/csv.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import { clockAt } from "../time/localClock.ts";
import { figure } from "../words/numbers.ts";

/** The strata hour by hour, for reading and copying; every step is in the CSV. */
export function StrataTable(props: { picture: RunPicture }) {
  const when = (ms: number) => {
    const { day, clock } = clockAt(props.picture.ruler, ms);
    return `${day} ${clock}`;
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide tall" tabIndex={0} aria-label="Hours in figures">
      <table>
        <caption class="unseen">Charge at the start of each hour, powers as means over it</caption>
        <thead>
          <tr>
            <th scope="col">Hour from</th>
            <th scope="col">Charge, %</th>
            <th scope="col">Ah</th>
            <th scope="col">Coming in, W</th>
            <th scope="col">Taken by shade, W</th>
            <th scope="col">Spilled, W</th>
            <th scope="col">Loads get, W</th>
            <th scope="col">Unserved, W</th>
          </tr>
        </thead>
        <tbody>
          <For each={hourRows(props.picture)}>
            {(row) => (
              <tr>
                <th scope="row">{when(row.ms)}</th>
                <td>{figure(row.chargeShare * 100, 1)}</td>
                <td>{figure(row.chargeShare * props.picture.fullAh)}</td>
                <td>{figure(row.incomingW)}</td>
                <td>{figure(row.shadeW)}</td>
                <td>{figure(row.spilledW)}</td>
                <td>{figure(row.servedW)}</td>
                <td>{figure(row.unservedW)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
