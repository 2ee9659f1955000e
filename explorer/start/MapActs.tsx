import { For, Show } from "solid-js";
import { VIEWS } from "./mapView.ts";

/** How near one looks, and what the dots are. */
export function MapActs(props: { view: number; onLook: (view: number) => void; isHeard: boolean }) {
  return (
    <div class="map-acts">
      <For each={VIEWS}>
        {({ name }, index) => (
          <button
            type="button"
            class="act"
            aria-pressed={props.view === index()}
            aria-label={`Show ${name === "nearby" ? "what is nearby" : `the ${name}`}`}
            onClick={() => props.onLook(index())}
          >
            {name}
          </button>
        )}
      </For>
      <span class="map-key">
        <svg width="12" height="12" aria-hidden="true">
          <circle class="map-station" cx="6" cy="6" r="4" />
        </svg>{" "}
        climate station
        <Show when={props.isHeard}>
          {", "}
          <svg width="12" height="12" aria-hidden="true">
            <circle class="map-station map-heard" cx="6" cy="6" r="4" />
          </svg>{" "}
          used here
        </Show>
      </span>
    </div>
  );
}
