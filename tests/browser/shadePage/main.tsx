/** The shade entry alone on a page, with a document that keeps what it is told: for the browser tests. */
import { createSignal } from "solid-js";
import { render } from "solid-js/web";
import {
  applyChanges,
  type Change,
  readScenario,
  type Scenario,
  type ScenarioInput,
} from "../../../engine/scenario/index.ts";
import { ShadeView } from "../../../explorer/entries/shade/ShadeView.tsx";
import "@fontsource-variable/radio-canada/standard.css";
import "../../../engine/drawing/palette.css";
import "../../../explorer/sheet.css";
import "../../../explorer/phone.css";
import "../../../engine/drawing/strata.css";

const asked = new URLSearchParams(location.search);
document.documentElement.dataset.light = asked.get("light") ?? "day";

const examples = import.meta.glob<ScenarioInput>("../../../scenarios/*.json", { eager: true, import: "default" });
let input = examples[`../../../scenarios/${asked.get("example") ?? "walnut-grove"}.json`]!;
if (asked.has("meadow")) {
  const meadow = input.variants!.find((variant) => variant.id === "meadow")!;
  input = changed(meadow.changes as Change[]);
}

function changed(changes: readonly Change[]): ScenarioInput {
  const done = applyChanges(input, changes);
  if (!done.ok) throw new Error(done.problems[0]!.message);
  return done.document as ScenarioInput;
}

function read(): Scenario {
  const found = readScenario(input);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.scenario;
}

const [scenario, setScenario] = createSignal(read());
const told: { changes: Change[]; label: string }[] = [];
Object.assign(window, { told });

render(
  () => (
    <main class="sheet">
      <h1 class="unseen">Shade</h1>
      <h2 class="unseen">Who gets the sun?</h2>
      <ShadeView
        scenario={scenario()}
        onChanges={(changes, label) => {
          told.push({ changes, label });
          input = changed(changes);
          setScenario(read());
        }}
      />
    </main>
  ),
  document.querySelector("#root")!,
);
