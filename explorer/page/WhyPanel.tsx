import { createEffect, For, on, Show } from "solid-js";
import { askWhy } from "../../engine/answers/run/ask.ts";
import { letterOf } from "../../engine/notebook/letterOf.ts";
import { THIN } from "../../engine/words/numbers.ts";
import type { NotebookPage, WhyOf } from "../notebook/notebookPage.ts";
import { Problems } from "../parts/EntryState.tsx";
import { ScenarioChoice } from "../parts/ScenarioChoice.tsx";
import { FigureOrigin } from "./FigureOrigin.tsx";
import { whyLink } from "./whyLink.ts";
import "./why.css";

/** Beside the sheet: how a number comes about, from the sky to the bank, or where a quoted figure comes from. */
export function WhyPanel(props: { page: NotebookPage; of: WhyOf }) {
  let close!: HTMLButtonElement;
  const before = document.activeElement;
  const leave = () => {
    props.page.askWhy(null);
    if (before instanceof HTMLElement && before.isConnected) before.focus();
  };
  createEffect(
    on(
      () => props.of,
      () => close.focus(),
    ),
  );
  const place = () => props.page.notebook().entries.findIndex(({ id }) => id === props.of.entry);
  return (
    <aside
      class="why no-print"
      aria-label="Why this number?"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        leave();
      }}
    >
      <p class="why-acts">
        <button type="button" class="act" ref={close} onClick={leave}>
          Close
        </button>
      </p>
      <h2>Why this number?</h2>
      <Show when={place() >= 0}>
        <p>
          Asked in{" "}
          <a href={`#${props.of.entry}`}>
            {letterOf(place())}, {props.page.notebook().entries[place()]!.title}
          </a>
          .
        </p>
      </Show>
      <Show when={"ms" in props.of && props.of}>{(of) => <Instant page={props.page} of={of()} />}</Show>
      <Show when={"figure" in props.of && props.of}>
        {(of) => <FigureOrigin page={props.page} figure={of().figure} />}
      </Show>
    </aside>
  );
}

function Instant(props: { page: NotebookPage; of: Extract<WhyOf, { readonly ms: number }> }) {
  const found = () => props.page.find(askWhy(props.of.scenario, props.of.ms));
  return (
    <>
      <p>One run under the sky as written, of</p>
      <p class="choices">
        <ScenarioChoice
          page={props.page}
          label="Scenario that is explained"
          value={props.of.scenario}
          onPick={(scenario) => props.page.askWhy({ ...props.of, scenario })}
        />
        <a class="act" href={whyLink(location, props.of)}>
          Link to this
        </a>
      </p>
      <Problems of={[found()]} />
      <Show when={found().result} fallback={<p>Working it out…</p>}>
        {(why) => (
          <div class="data" classList={{ "why-stale": found().stale }}>
            <For each={why().parts}>
              {({ title, numbers }) => (
                <section>
                  <h3>{title}</h3>
                  <dl>
                    <For each={numbers}>
                      {({ name, value, unit, how }) => (
                        <div>
                          <dt>{name}</dt>
                          <dd>
                            <strong>
                              {fiveFigures(value)}
                              {unit === "" ? "" : `${THIN}${unit}`}
                            </strong>
                            <Show when={how !== ""}>
                              <span>{how}</span>
                            </Show>
                          </dd>
                        </div>
                      )}
                    </For>
                  </dl>
                </section>
              )}
            </For>
          </div>
        )}
      </Show>
    </>
  );
}

/** Five figures, so that a calculator gets back what stands below. */
function fiveFigures(value: number): string {
  return String(Number(value.toPrecision(5))).replace("-", "−");
}
