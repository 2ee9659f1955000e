import { Show } from "solid-js";
import type { GearRange, GenericGear } from "../../engine/gear/gearTable.ts";
import { THIN } from "../../engine/words/numbers.ts";
import { MeasuredBox } from "./MeasuredBox.tsx";
import { measured } from "./ownMeasured.ts";

/** One kind of gear on the shelf: what it usually takes, what one measured oneself, and what can be done with it. */
export function GearRow(props: {
  gear: GenericGear;
  /** Of its name. */
  id: string;
  onAdd: () => void;
  onSaid: (sentence: string) => void;
}) {
  const { gear } = props;
  const isOwn = () => measured.own().some((each) => each.id === gear.id);
  return (
    <li class="gear-row">
      <span class="gear-name" id={props.id}>
        <strong>{gear.name}</strong>
        <span class="gear-source">{gear.source}</span>
      </span>
      <span class="gear-usual">
        <Show when={gear.idle}>
          {(idle) => (
            <span>
              {gear.radio === null ? "idle" : "receiving"} {rangeWords(idle(), gear.unit)}
            </span>
          )}
        </Show>
        <span>
          {gear.radio === null ? "at work" : "sending"} {rangeWords(gear.working, gear.unit)}
        </span>
      </span>
      <span class="gear-mine">
        <Show
          when={!isOwn()}
          fallback={
            <button type="button" class="act" aria-label={`Off the shelf: ${gear.name}`} onClick={() => forget(gear)}>
              Off the shelf
            </button>
          }
        >
          <Show when={gear.idle}>
            <MeasuredBox gear={gear} which="idle" onSaid={props.onSaid} />
          </Show>
          <MeasuredBox gear={gear} which="working" onSaid={props.onSaid} />
        </Show>
      </span>
      <button type="button" class="act" aria-label={`Add ${gear.name}`} onClick={() => props.onAdd()}>
        Add
      </button>
    </li>
  );

  function forget({ id, name }: GenericGear): void {
    measured.removeOwn(id);
    props.onSaid(`${name} is off the shelf; plans that have it keep it.`);
  }
}

function rangeWords({ low, usual, high }: GearRange, unit: string): string {
  return low === high ? `${usual}${THIN}${unit}` : `${usual}${THIN}${unit} (${low}–${high})`;
}
