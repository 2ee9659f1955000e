import { For, Show } from "solid-js";
import type { RunPicture } from "../../picture/runPicture.ts";
import { clockAt, dayName } from "../../time/localClock.ts";
import { figure } from "../../words/numbers.ts";

/** The same days in figures. */
export function DaysTable(props: { picture: RunPicture }) {
  const panels = () => props.picture.incoming.filter((part) => part.shadeLossW !== null);
  const clock = (ms: number | null) => (ms === null ? "–" : clockAt(props.picture.ruler, ms).clock.slice(0, 5));
  const share = (value: number | null) => (value === null ? "–" : figure(value * 100));
  const hasSources = () => props.picture.days.some((day) => day.sourceWh > 0);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="Table of days">
      <table>
        <caption class="unseen">Each day of the event in figures</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Sun rises</th>
            <th scope="col">sets</th>
            <For each={panels()}>{(part) => <th scope="col">{part.name}, Wh</th>}</For>
            <th scope="col">Taken by shade, Wh</th>
            <th scope="col">Spilled, Wh</th>
            <Show when={hasSources()}>
              <th scope="col">Other sources, Wh</th>
            </Show>
            <th scope="col">Loads want, Wh</th>
            <th scope="col">Unserved, Wh</th>
            <th scope="col">Charge at dusk, %</th>
            <th scope="col">at dawn, %</th>
            <th scope="col">Lowest, %</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.picture.days}>
            {(day) => (
              <tr>
                <th scope="row">{dayName(day.date)}</th>
                <td>{clock(day.sunriseMs)}</td>
                <td>{clock(day.sunsetMs)}</td>
                <For each={panels()}>{(_, g) => <td>{figure(day.groupWh[g()]!)}</td>}</For>
                <td>{figure(day.shadeLossWh)}</td>
                <td>{figure(day.spilledWh)}</td>
                <Show when={hasSources()}>
                  <td>{figure(day.sourceWh)}</td>
                </Show>
                <td>{figure(day.demandWh)}</td>
                <td>{figure(day.unservedWh)}</td>
                <td>{share(day.duskShare)}</td>
                <td>{share(day.dawnShare)}</td>
                <td>{share(day.lowestShare)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
