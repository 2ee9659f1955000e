import { For } from "solid-js";
import { dayName } from "../../time/localClock.ts";
import { sunDays } from "./sunHours.ts";
import type { Sunlight } from "./sunlight.ts";

/** The strip in figures: each group and day. */
export function ShadeTable(props: { light: Sunlight }) {
  const rows = () =>
    props.light.groups.flatMap((group) => sunDays(props.light, group).map((day) => ({ name: group.name, day })));
  const hours = (value: number) => value.toFixed(1);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="Hours of sun in figures">
      <table>
        <caption class="unseen">Hours of sun of each panel group on each day of the event, under a clear sky</caption>
        <thead>
          <tr>
            <th scope="col">Panels</th>
            <th scope="col">Day</th>
            <th scope="col">Sun up, h</th>
            <th scope="col">Open sun, h</th>
            <th scope="col">In part, h</th>
            <th scope="col">worth, h</th>
            <th scope="col">Dark, h</th>
            <th scope="col">Sun behind or packed away, h</th>
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {({ name, day }) => (
              <tr>
                <th scope="row">{name}</th>
                <td>
                  {dayName(day.date)}
                  {day.isWhole ? "" : " (part of it)"}
                </td>
                <td>{hours(day.upH)}</td>
                <td class="sum">{hours(day.openH)}</td>
                <td>{hours(day.partH)}</td>
                <td>{hours(day.partWorthH)}</td>
                <td>{hours(day.darkH)}</td>
                <td>{hours(day.awayH)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
