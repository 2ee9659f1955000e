import { For } from "solid-js";
import type { VersusPicture } from "../../results/answers.ts";
import { tallyOf100 } from "./versusWords.ts";

const LOOKS = ["both", "second", "first", "neither"] as const;
const STROKE_PX = 16;

/** A hundred skies as strokes: open where it holds either way, filled where only the change makes it hold, dotted where nothing does. */
export function Tally(props: { picture: VersusPicture; names: { first: string; second: string } }) {
  const counts = () => tallyOf100(props.picture);
  const strokes = () => counts().flatMap((count, k) => Array.from({ length: count }, () => LOOKS[k]!));
  const words = () => {
    const [both, second, first, neither] = counts();
    return [
      { look: "both", text: `${both} hold either way` },
      { look: "second", text: `${second} only with ${props.names.second}` },
      ...(first > 0 ? [{ look: "first", text: `${first} only with ${props.names.first}` }] : []),
      { look: "neither", text: `${neither} fail either way` },
    ];
  };
  return (
    <figure class="tally">
      <svg
        width={20 * STROKE_PX}
        height={5 * 26}
        role="img"
        aria-label={`Of 100 skies: ${words()
          .map(({ text }) => text)
          .join(", ")}.`}
      >
        <For each={strokes()}>
          {(look, i) => (
            <rect
              class={`stroke-${look}`}
              x={(i() % 20) * STROKE_PX + Math.floor((i() % 20) / 5) * 1.5 + 1}
              y={Math.floor(i() / 20) * 26 + 2}
              width={8}
              height={19}
            />
          )}
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
