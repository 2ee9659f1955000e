import { For } from "solid-js";
import { TALLY_PX, tallyStrokes, tallyWords } from "../../../engine/answers/versus/tallyStrokes.ts";
import type { VersusPicture } from "../../../engine/answers/versus/versusPicture.ts";

/** A hundred skies as strokes: open where it holds either way, filled where only the change makes it hold, dotted where nothing does. */
export function Tally(props: { picture: VersusPicture; names: { first: string; second: string } }) {
  const words = () => tallyWords(props.picture, props.names);
  return (
    <figure class="tally">
      <svg
        width={TALLY_PX.width}
        height={TALLY_PX.height}
        role="img"
        aria-label={`Of 100 skies: ${words()
          .map(({ text }) => text)
          .join(", ")}.`}
      >
        <For each={tallyStrokes(props.picture)}>
          {({ look, x, y }) => <rect class={`stroke-${look}`} x={x} y={y} width={8} height={19} />}
        </For>
      </svg>
      <figcaption>
        <For each={words()}>
          {(each) => (
            <span class="tally-key">
              <svg width="12" height="19" aria-hidden="true">
                <rect class={`stroke-${each.look}`} x={2} y={1} width={8} height={17} />
              </svg>
              {each.text}
            </span>
          )}
        </For>
      </figcaption>
    </figure>
  );
}
