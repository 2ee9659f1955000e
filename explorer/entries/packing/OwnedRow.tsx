import { For, Show } from "solid-js";
import { totalFigure } from "../../../engine/answers/packing/packingWords.ts";
import type { OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { PACK_ORDERS, type PackOrder, thingPrice } from "../../../engine/packing/thingPrice.ts";

/** One thing: its tick, how many there are and are taken, what one takes, who has it. */
export function OwnedRow(props: {
  thing: OwnedThing;
  /** Null while nothing is known. */
  take: number | null;
  canTick: boolean;
  isOpen: boolean;
  /** @returns whether there is such a set */
  onTick: (count: number) => boolean;
  onOpen: () => void;
}) {
  const taken = () => props.take ?? 0;
  const follows = () => props.thing.kind === "lead" || props.thing.kind === "controller";
  const cell = (order: PackOrder) => {
    const price = thingPrice(props.thing);
    const value = price[order];
    if (value === null) return "not stated";
    return `${totalFigure(value, order)}${order === "mass" && price.isTypical ? ", usual" : ""}`;
  };
  const tick = (box: HTMLInputElement) => {
    if (!props.onTick(box.checked ? props.thing.count : 0)) box.checked = taken() > 0;
  };
  return (
    <tr classList={{ "packing-home": props.take === 0 }}>
      <th scope="row">
        <label class="packing-tick">
          <input
            type="checkbox"
            checked={taken() > 0}
            disabled={!props.canTick || follows() || props.thing.count === 0}
            aria-label={`Take ${props.thing.name}`}
            onChange={(event) => tick(event.currentTarget)}
          />
        </label>
        <button type="button" class="packing-name" aria-expanded={props.isOpen} onClick={() => props.onOpen()}>
          {props.thing.name}
        </button>
      </th>
      <td data-head="have">{props.thing.count}</td>
      <td data-head="take">
        <Show
          when={props.canTick && !follows() && props.thing.count > 1}
          fallback={<b>{taken() > 0 ? taken() : ""}</b>}
        >
          <select
            aria-label={`How many of ${props.thing.name}`}
            onChange={(event) => {
              if (!props.onTick(Number(event.currentTarget.value))) event.currentTarget.value = String(taken());
            }}
          >
            <For each={Array.from({ length: props.thing.count + 1 }, (_, count) => count)}>
              {(count) => (
                <option value={count} selected={count === taken()}>
                  {count}
                </option>
              )}
            </For>
          </select>
        </Show>
      </td>
      <For each={PACK_ORDERS}>{(order) => <td data-head={HEADS[order]}>{cell(order)}</td>}</For>
      <td class="packing-words">{whose(props.thing)}</td>
    </tr>
  );
}

const HEADS: Readonly<Record<PackOrder, string>> = { mass: "weight", minutes: "min", money: "money" };

function whose({ get, who }: OwnedThing): string {
  const how = get === "borrow" ? "to borrow" : get === "buy" ? "to buy" : "";
  return [how, who ?? ""].filter((part) => part !== "").join(", ") || "not stated";
}
