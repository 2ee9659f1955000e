import { createSignal, Show } from "solid-js";
import type { GenericGear } from "../../engine/gear/gearTable.ts";
import { typedNumber } from "../words/typedNumber.ts";
import { measured } from "./ownMeasured.ts";

/** Most that a figure may be, W or A. */
const MOST = 5000;

/** A field for what one measured of a kind of gear; a figure far from what such things take is asked about before it is taken. */
export function MeasuredBox(props: {
  gear: GenericGear;
  which: "idle" | "working";
  onSaid: (sentence: string) => void;
}) {
  const [asked, setAsked] = createSignal<{ readonly value: number; readonly doubt: string } | null>(null);
  let box!: HTMLInputElement;
  const when = () =>
    props.gear.radio === null
      ? props.which === "idle"
        ? "idle"
        : "at work"
      : props.which === "idle"
        ? "receiving"
        : "sending";
  const value = () => measured.of(props.gear.id)?.[props.which];
  const written = () => (value() === undefined ? "" : String(value()));
  const commit = () => {
    const typed = box.value.trim() === "" ? null : typedNumber(box.value);
    setAsked(null);
    if (typed !== null && !(typeof typed === "number" && typed >= 0 && typed <= MOST)) {
      props.onSaid(
        `${props.gear.name}, ${when()}: "${box.value}" should be a number of ${props.gear.unit} from 0 to ${MOST}, or nothing.`,
      );
      box.value = written();
      return;
    }
    const doubt = typeof typed === "number" ? measured.doubt(props.gear.id, props.which, typed) : null;
    if (doubt !== null) {
      setAsked({ value: typed as number, doubt });
      return;
    }
    props.onSaid("");
    measured.write(props.gear.id, props.which, typed as number | null);
  };
  const answer = (isSo: boolean) => {
    const about = asked();
    setAsked(null);
    if (about !== null && isSo) measured.write(props.gear.id, props.which, about.value, true);
    else box.value = written();
    box.focus();
  };
  return (
    <>
      <label>
        <span class="gear-when">{when()}, measured</span>
        <input
          ref={box}
          type="text"
          inputmode="decimal"
          autocomplete="off"
          aria-label={`${props.gear.name}, ${when()}, measured by you, ${props.gear.unit}`}
          value={written()}
          onChange={commit}
        />{" "}
        {props.gear.unit}
      </label>
      <Show when={asked()}>
        {(about) => (
          <span class="gear-asked" role="alert">
            {about().doubt}{" "}
            <button type="button" class="act" onClick={() => answer(true)}>
              Really so
            </button>{" "}
            <button type="button" class="act" onClick={() => answer(false)}>
              No
            </button>
          </span>
        )}
      </Show>
    </>
  );
}
