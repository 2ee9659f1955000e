import { Show } from "solid-js";
import { inHundred } from "../../engine/run/sizeSentences.ts";
import { percent } from "../words/numbers.ts";
import type { Skies } from "./makeSkies.ts";

/** One line under the answer: in how many skies the plan holds. Only the end is read out, not every step on the way. */
export function SkiesCaption(props: { skies: Skies }) {
  const working = () => (props.skies.kind === "working" ? props.skies : null);
  return (
    <p class="more skies">
      <span role="status">{skiesWords(props.skies)}</span>
      <Show when={working()}>
        {(now) => <span aria-hidden="true">Drawing a thousand skies: {percent(now().done)}</span>}
      </Show>
    </p>
  );
}

function skiesWords(skies: Skies): string {
  if (skies.kind === "working") return "";
  if (skies.kind === "failed") return `How it does over many skies could not be worked out: ${skies.sentence}`;
  const { share, low, high } = skies.holds;
  const range = `${Math.round(100 * low)} to ${Math.round(100 * high)}`;
  return `Over a thousand drawn skies it holds in ${inHundred(share)} of 100 (${range} by the size of the sample).`;
}
