import { createMemo, createSignal, For, Show } from "solid-js";
import { headingDrawing } from "../../../engine/answers/shade/headingDrawing.ts";
import { spotsDrawing } from "../../../engine/answers/shade/spotsDrawing.ts";
import type { SpotsPicture } from "../../../engine/answers/shade/spotsPicture.ts";
import { SPOT, spotRows } from "../../../engine/answers/shade/spotsRows.ts";
import { spanWords, wayWords } from "../../../engine/answers/shade/spotsWords.ts";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { spotChanges } from "../../../engine/spots/spotChanges.ts";
import { type Spot, spotAt } from "../../../engine/spots/spotGrid.ts";
import { DrawnPicture } from "../../charts/DrawnPicture.tsx";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { type ReadSpot, readSpot, spotNearest } from "./readSpot.ts";
import { SpotsMap } from "./SpotsMap.tsx";

const PHONE_PX = [328, 420] as const;
const STRIP_PX = [388, 150] as const;
const PHONE_STRIP_PX = [328, 150] as const;

/** The map of one group with the spot that is read, the spots that are named, and for a roof its headings. */
export function SpotsView(props: EntryProps<"shade"> & { picture: SpotsPicture }) {
  const [chosen, setChosen] = createSignal<Spot | null>(null);
  const [done, setDone] = createSignal<string | null>(null);
  const isPhone = () => props.page.room().isPhone;
  const map = createMemo(() => spotsDrawing(props.picture, isPhone() ? PHONE_PX : undefined));
  const strip = createMemo(() => headingDrawing(props.picture.report, isPhone() ? PHONE_STRIP_PX : STRIP_PX));
  // A place and no number: a finer grid counts otherwise.
  const spot = createMemo(() => {
    const { report } = props.picture;
    return readSpot(props.picture, spotNearest(report.grid, chosen() ?? report.asGood));
  });
  const read = (k: number) => {
    if (k !== spot().k) setDone(null);
    setChosen(spotAt(props.picture.report.grid, k));
  };
  const name = () => props.page.scenario(props.doc.scenario)?.name ?? "Scenario";

  /** What puts the group at a spot, and the document with that worked in; null where it stands there already. */
  function changesTo(to: ReadSpot) {
    const document = props.page.document(props.doc.scenario);
    if (document === null) return null;
    const changes = spotChanges(props.picture.group, to, document);
    const changed = applyChanges(document, changes);
    if (changes.length === 0 || !changed.ok) return null;
    return { changes, words: changesInWords(changes, document, changed.document as ScenarioInput).join("; ") };
  }
  const isRefused = (to: ReadSpot) => {
    if (to.isTaken) setDone("Something stands there, or so near that they have no room: choose another spot.");
    return to.isTaken;
  };
  const put = (to: ReadSpot) => {
    if (isRefused(to)) return;
    const made = changesTo(to);
    if (made === null) {
      setDone("They stand there already.");
      return;
    }
    const { name: group } = props.picture.group;
    props.page.change(props.doc.scenario, made.changes, `${group} ${wayWords(props.picture.report.here, to)}`);
    setChosen(null);
    setDone(`Put there: ${made.words}. Undo takes it back.`);
  };
  const make = (to: ReadSpot) => {
    if (isRefused(to)) return;
    const made = changesTo(to);
    if (made === null) {
      setDone("That is the scenario as it stands.");
      return;
    }
    const way = wayWords(props.picture.report.here, to).replaceAll("\u202f", " ");
    const given = props.page.branch(props.doc.scenario, props.id, made.changes, `${name()}, ${way}`);
    if (given !== null)
      setDone(`${given} is a scenario now, based on ${name()}: ${made.words}. Undo takes it away again.`);
  };
  return (
    <div class="spots-section">
      <div>
        <SpotsMap picture={props.picture} drawing={map()} chosen={spot()} onRead={read} onPut={put} onMake={make} />
        <p class="spots-reading" aria-live="polite">
          {spot().words}
        </p>
        <p class="acts-row no-print">
          <button type="button" class="act" onClick={() => put(spot())}>
            Put them there
          </button>
          <button type="button" class="act" onClick={() => make(spot())}>
            Make this spot a scenario
          </button>
          <span>A click on the map puts them there; arrow keys move the spot, Enter makes a scenario.</span>
        </p>
        <p class="spots-done" role="status">
          {done()}
        </p>
      </div>
      <div class="spots-side data">
        <NamedSpots picture={props.picture} onRead={(at) => read(spotNearest(props.picture.report.grid, at))} />
        <Show when={strip()}>
          {(drawing) => (
            <>
              <h3>Over the heading</h3>
              <p class="spots-note">Wh {spanWords(props.picture.report)}, nose towards each bearing</p>
              <DrawnPicture class="spots-strip" drawing={drawing()} />
            </>
          )}
        </Show>
      </div>
    </div>
  );
}

function NamedSpots(props: { picture: SpotsPicture; onRead: (at: { eastM: number; northM: number }) => void }) {
  const columns = [SPOT.day, SPOT.lead, SPOT.loses];
  return (
    <table class="spots-table">
      <thead>
        <tr>
          <th scope="col">{SPOT.name.head}</th>
          <For each={columns}>{({ head }) => <th scope="col">{head}</th>}</For>
        </tr>
      </thead>
      <tbody>
        <For each={spotRows(props.picture.report)}>
          {(row) => (
            <tr>
              <th scope="row">
                <button type="button" class="act" onClick={() => props.onRead(row)}>
                  {row.name}
                </button>
                <Show when={row.way !== "here"}>
                  <span class="spots-way">{row.way}</span>
                </Show>
              </th>
              <For each={columns}>{({ cell }) => <td>{cell(row)}</td>}</For>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}
