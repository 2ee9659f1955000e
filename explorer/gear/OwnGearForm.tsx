import { createUniqueId, For } from "solid-js";
import { GEAR_AT_V, OWN_USES, type OwnGear } from "../../engine/gear/index.ts";
import { WHEN } from "../../engine/start/index.ts";
import { typedNumber } from "../words/typedNumber.ts";

/** Most that a figure may be, W or A. */
const MOST = 5000;

/** Writes a kind of gear down that the shelf does not have. */
export function OwnGearForm(props: {
  /** What was looked for and not found. */
  name: string;
  onKind: (kind: Omit<OwnGear, "id">) => void;
  onWrong: (sentence: string) => void;
}) {
  const id = createUniqueId();
  const field = (form: HTMLFormElement, name: string) => String(new FormData(form).get(name) ?? "").trim();
  const commit = (form: HTMLFormElement) => {
    const name = field(form, "name");
    const [idle, working, percent] = ["idle", "working", "percent"].map((each) => typedNumber(field(form, each)));
    const isFigure = (value: unknown) => typeof value === "number" && value >= 0 && value <= MOST;
    if (name.length < 1 || name.length > 80) return props.onWrong("The name should be 1 to 80 letters.");
    if (!isFigure(working)) return props.onWrong(`What it takes at work should be a number from 0 to ${MOST}.`);
    if (idle !== "" && !isFigure(idle))
      return props.onWrong(`What it takes idle should be a number from 0 to ${MOST}, or nothing.`);
    if (!(typeof percent === "number" && percent >= 0 && percent <= 100))
      return props.onWrong("The part of that time should be a number from 0 to 100 %.");
    props.onKind({
      name,
      unit: field(form, "unit") as OwnGear["unit"],
      ...(idle === "" ? {} : { idle: idle as number }),
      working: working as number,
      use: field(form, "use") as OwnGear["use"],
      ...(percent === 100 ? {} : { share: percent / 100 }),
    });
  };
  const number = (name: string, label: string, value = "") => (
    <label>
      {label} <input name={name} type="text" inputmode="decimal" autocomplete="off" size={6} value={value} />
    </label>
  );
  return (
    <form
      class="gear-own"
      aria-labelledby={`${id}-own`}
      onSubmit={(event) => {
        event.preventDefault();
        commit(event.currentTarget);
      }}
    >
      <strong id={`${id}-own`}>A kind of your own</strong>
      <label>
        Name <input name="name" type="text" autocomplete="off" maxLength={80} value={props.name} />
      </label>
      <label>
        In{" "}
        <select name="unit">
          <option value="W">W</option>
          <option value="A">A at {GEAR_AT_V} V</option>
        </select>
      </label>
      {number("working", "At work")}
      {number("idle", "Idle, if any")}
      <label>
        It works{" "}
        <select name="use">
          <For each={OWN_USES}>{(use) => <option value={use}>{WHEN[use]}</option>}</For>
        </select>
      </label>
      {number("percent", "of that time, %", "100")}
      <button type="submit" class="act">
        Put it on the shelf
      </button>
    </form>
  );
}
