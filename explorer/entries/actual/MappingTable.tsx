import { For, Show } from "solid-js";
import type { MeterMapping } from "../../../engine/meter/meterMapping.ts";
import { typedNumber } from "../../words/typedNumber.ts";
import type { LogRead } from "./readLog.ts";

type ColumnName = keyof NonNullable<MeterMapping["columns"]>;

const COLUMN_WORDS: readonly (readonly [ColumnName, string])[] = [
  ["time", "Date and time"],
  ["date", "Date, in a column of its own"],
  ["charge", "Charge"],
  ["bankV", "Bank, V"],
  ["bankA", "Bank, A"],
  ["bankW", "Bank, W"],
  ["pvW", "Panels, W"],
  ["loadW", "Load, W"],
  ["loadA", "Load, A"],
  ["usedAh", "Ah out since full"],
];

/** What can be said of how a log is written; the empty choice has it found in the log. */
const SETTINGS = [
  [
    "timeForm",
    "Dates are written",
    {
      yearFirst: "year first",
      dayFirst: "day first",
      monthFirst: "month first",
      epochS: "seconds since 1970",
      epochMs: "milliseconds since 1970",
    },
  ],
  ["stamp", "Each row tells of", { instant: "its instant", start: "the time from it on", end: "the time up to it" }],
  ["currentSign", "Bank current while charging is", { chargingPositive: "positive", chargingNegative: "negative" }],
  ["chargeUnit", "Charge is in", { percent: "per cent", share: "shares of 1" }],
  ["delimiter", "Columns are parted by", { ",": "commas", ";": "semicolons", "\t": "tabs" }],
  ["decimal", "The decimal mark is", { ".": "a point", ",": "a comma" }],
] as const;

/** What is in which column of a log and how it is written: as found, and as the person says. */
export function MappingTable(props: { read: LogRead; zone: string; onMap: (mapping: MeterMapping) => void }) {
  const shown = () => props.read.mapping;
  const given = () => props.read.given;
  const setColumn = (name: ColumnName, title: string) =>
    props.onMap({ ...given(), columns: { ...shown().columns, [name]: title === "" ? null : title } });
  const set = (name: string, value: string | number) => {
    const { [name as "zone"]: _, ...rest } = given();
    const next = value === "" ? rest : { ...rest, [name]: value };
    // Other cells, other titles.
    if (name === "delimiter") delete (next as { columns?: unknown }).columns;
    props.onMap(next as MeterMapping);
  };
  const found = (name: string, words: Readonly<Record<string, string>>) => {
    const value = shown()[name as "zone"];
    return value === undefined ? "found in the log" : `found: ${words[value] ?? value}`;
  };
  return (
    <>
      <div class="mapping">
        <For each={COLUMN_WORDS}>
          {([name, label]) => (
            <label>
              <span>{label}</span>
              <select onChange={(event) => setColumn(name, event.currentTarget.value)}>
                <option value="" selected={typeof shown().columns?.[name] !== "string"}>
                  not in the log
                </option>
                <For each={props.read.titles}>
                  {(title) => (
                    <option value={title} selected={shown().columns?.[name] === title}>
                      {title}
                    </option>
                  )}
                </For>
              </select>
            </label>
          )}
        </For>
        <label>
          <span>Clock of the log</span>
          <input
            type="text"
            maxLength={60}
            value={shown().zone ?? props.zone}
            onChange={(event) => set("zone", event.currentTarget.value.trim())}
          />
        </label>
        <label>
          <span>Minutes to add to its clock</span>
          <input
            type="text"
            inputmode="decimal"
            maxLength={8}
            value={shown().shiftMinutes ?? 0}
            onChange={(event) => {
              const value = typedNumber(event.currentTarget.value);
              if (typeof value === "number" && Math.abs(value) <= 100_000) set("shiftMinutes", value);
              else event.currentTarget.value = String(shown().shiftMinutes ?? 0);
            }}
          />
        </label>
        <For each={SETTINGS}>
          {([name, label, words]) => (
            <label>
              <span>{label}</span>
              <select onChange={(event) => set(name, event.currentTarget.value)}>
                <option value="" selected={given()[name] === undefined}>
                  {found(name, words)}
                </option>
                <For each={Object.entries(words)}>
                  {([value, says]) => (
                    <option value={value} selected={given()[name] === value}>
                      {says}
                    </option>
                  )}
                </For>
              </select>
            </label>
          )}
        </For>
      </div>
      <Show when={props.read.sample.length > 0}>
        <details>
          <summary>The first rows of the file</summary>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
          <section class="wide" tabIndex={0} aria-label="The first rows of the file">
            <table>
              <caption class="unseen">The first rows of the file</caption>
              <thead>
                <tr>
                  <For each={props.read.titles.slice(0, 20)}>{(title) => <th scope="col">{title}</th>}</For>
                </tr>
              </thead>
              <tbody>
                <For each={props.read.sample}>
                  {(row) => (
                    <tr>
                      <For each={row.slice(0, 20)}>{(cell) => <td>{cell.slice(0, 40)}</td>}</For>
                    </tr>
                  )}
                </For>
              </tbody>
            </table>
          </section>
        </details>
      </Show>
    </>
  );
}
