import { For } from "solid-js";

/** What a plan is not, and what can hurt somebody who carries it out. */
export function Cautions(props: { remarks: readonly string[] }) {
  return (
    <footer class="cautions">
      <p>
        <strong>A plan and not a permit.</strong> Local codes and licensed persons decide what may be built and
        connected.
      </p>
      <ul>
        <li>
          Put a fuse close to the battery's positive post, and size it to the cable: a bank gives enough current to set
          fire to a wire.
        </li>
        <li>
          Do not charge lithium iron phosphate at or below 0 °C. Lead-acid batteries give off hydrogen: air them, and
          keep sparks away.
        </li>
        <li>Run a generator outdoors only, well away from doors, windows and tents: its fumes kill without a smell.</li>
        <li>
          Roofs, ladders and panels in wind take two people, dry weather and sound footing; a bank is heavy, so lift it
          together.
        </li>
        <li>Panels in the sun are live and cannot be switched off; several in series can give a shock.</li>
      </ul>
      <p>
        Club, place and figures of this example are invented. One run under the stated sky, not the odds: passing
        clouds, other operators, other days are not in it. Not modelled here: snow and dirt that build up, panels
        shading one another, single devices failing.
      </p>
      <For each={props.remarks}>{(remark) => <p>{remark}</p>}</For>
    </footer>
  );
}
