import { createMemo, createSignal, For, Show } from "solid-js";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { eventLeafShare } from "../../../engine/scenario/leafShareOf.ts";
import type { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { prepareObstacles } from "../../../engine/shade/prepareObstacles.ts";
import type { SunHour } from "./makeSunHour.ts";
import { SkyPlot } from "./SkyPlot.tsx";
import type { PairRoom } from "./shadeRoom.ts";

/** The sky as one panel group sees it, with the choice of the group. */
export function SkyOfGroup(props: {
  /** The site as it is drawn, with what is on its way. */
  site: Scenario;
  light: Sunlight;
  hour: SunHour;
  room: PairRoom;
  isInset: boolean;
}) {
  const [groupId, setGroupId] = createSignal<string | null>(null);
  const groups = () => props.site.panels.filter(({ count }) => count > 0);
  const looker = (): PanelGroup | null => groups().find(({ id }) => id === groupId()) ?? groups()[0] ?? null;
  /** Their names change with the document only, and not while a thing is on its way. */
  const choices = createMemo(() => groups().map(({ id, name }) => ({ id, name })), [], {
    equals: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  });
  const obstacles = createMemo(() => prepareObstacles(props.site.obstacles, eventLeafShare(props.site)));
  return (
    <Show when={looker()}>
      {(group) => (
        <div classList={{ "shade-inset": props.isInset }}>
          <h3>As {group().name} sees it</h3>
          <SkyPlot
            scenario={props.site}
            obstacles={obstacles()}
            light={props.light}
            paths={props.hour.paths()}
            day={props.hour.day()}
            eye={{ eastM: group().at.eastM, northM: group().at.northM, upM: group().at.heightM }}
            name={group().name}
            sun={props.hour.sun()}
            room={props.room}
          />
          <Show when={choices().length > 1}>
            <div class="shade-look">
              <span class="shade-how">Look from</span>
              <For each={choices()}>
                {({ id, name }) => (
                  <button type="button" class="act" aria-pressed={id === group().id} onClick={() => setGroupId(id)}>
                    {name}
                  </button>
                )}
              </For>
            </div>
          </Show>
        </div>
      )}
    </Show>
  );
}
