import { createSignal, For, Show } from "solid-js";
import { packingDrawing } from "../../../engine/answers/packing/packingDrawing.ts";
import type { PackingPicture } from "../../../engine/answers/packing/packingPicture.ts";
import { packingSentence, setWords, totalWords } from "../../../engine/answers/packing/packingWords.ts";
import { frontierColumns, frontierRows } from "../../../engine/answers/packing/rows.ts";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import type { PackedSet } from "../../../engine/packing/packingReport.ts";
import { PACK_ORDERS } from "../../../engine/packing/thingPrice.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { inHundred, oddsRange } from "../../../engine/words/oddsWords.ts";
import { DrawnPicture } from "../../charts/DrawnPicture.tsx";
import type { EntryProps } from "../../notebook/entryKind.ts";

/** As wide as there is room beside the list. */
const PICTURE_PX = 500;

/** Every set over weight and minutes; the same that goes into a report. */
function Picture(props: { picture: PackingPicture }) {
  const drawing = () => packingDrawing(props.picture.report, packingSentence(props.picture), PICTURE_PX);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide packing-picture" tabIndex={0} aria-label="Every set over weight and minutes">
      <DrawnPicture drawing={drawing()} class="drawing" />
    </section>
  );
}

/** The sets that no other beats; each can be looked at. */
function Table(props: { picture: PackingPicture; asked: number | null; onAsk: (key: number) => void }) {
  const columns = () => frontierColumns(props.picture);
  const rows = () => frontierRows(props.picture);
  return (
    <Show when={rows().length > 0}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="Sets that no other beats">
        <table class="packing-table packing-frontier">
          <caption class="unseen">
            Sets that reach the target and that no other beats in weight, minutes and money
          </caption>
          <thead>
            <tr>
              <For each={columns()}>
                {({ head, isWords }) => (
                  <th scope="col" class={isWords === true ? "packing-words" : undefined}>
                    {head}
                  </th>
                )}
              </For>
            </tr>
          </thead>
          <tbody>
            <For each={rows()}>
              {(row) => (
                <tr aria-selected={(props.asked ?? rows()[0]?.set.key) === row.set.key}>
                  <th scope="row">
                    <button type="button" class="packing-name" onClick={() => props.onAsk(row.set.key)}>
                      {columns()[0]!.cell(row)}
                    </button>
                  </th>
                  <For each={columns().slice(1)}>
                    {(column) => (
                      <td data-head={column.head} class={column.isWords === true ? "packing-words" : undefined}>
                        {column.cell(row)}
                      </td>
                    )}
                  </For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
}

/** The set that is looked at, read out, and made a scenario. */
function Reading(
  props: EntryProps<"packing"> & {
    picture: PackingPicture;
    asked: number | null;
    documents: readonly ScenarioInput[];
  },
) {
  const [made, setMade] = createSignal("");
  const report = () => props.picture.report;
  const set = (): PackedSet | null =>
    report().sets?.find(({ key }) => key === props.asked) ??
    report().frontier.find(({ key }) => key === props.asked) ??
    report().proposed ??
    report().nearest;
  const make = async (chosen: PackedSet) => {
    const [plan, ...others] = props.documents;
    const { packingPlan } = await import("../../../engine/packing/packingPlan.ts");
    const ready = plan === undefined ? null : packingPlan(plan, others, props.picture.things);
    if (plan === undefined || ready === null || !ready.ok) return;
    const changes = ready.plan.changesOf(chosen.key);
    const base = props.page.scenario(props.doc.scenario)?.name ?? "plan";
    if (changes.length === 0) return setMade(`That is ${base} as it stands.`);
    const changed = applyChanges(plan, changes);
    if (!changed.ok) return;
    const name = `${base}, ${setWords(chosen, props.picture.things)}`.slice(0, MOST_LETTERS);
    const given = props.page.branch(props.doc.scenario, props.id, changes, name);
    if (given === null) return;
    const words = changesInWords(changes, plan, changed.document as ScenarioInput);
    setMade(`${given} is a scenario now, based on ${base}: ${words.join("; ")}. Undo takes it away again.`);
  };
  return (
    <>
      <Show when={set()}>
        {(chosen) => (
          <>
            <p class="packing-reading" aria-live="polite">
              {readSet(chosen(), props.picture)}
            </p>
            <p class="acts-row no-print">
              <button type="button" class="act" onClick={() => void make(chosen())}>
                Make this a scenario
              </button>
            </p>
          </>
        )}
      </Show>
      <p class="packing-made" role="status">
        {made()}
      </p>
    </>
  );
}

/** Names of scenarios are at most so long. */
const MOST_LETTERS = 80;

/** "Block, 280 Ah: holds in 11 of 100 skies (9–13), 23 kg, 0 min, 0 in money." */
function readSet(set: PackedSet, { things }: PackingPicture): string {
  const words = setWords(set, things);
  const odds =
    set.holds === null
      ? "was not run to the end"
      : `holds in ${inHundred(set.holds)} of 100 skies (${oddsRange(set.holds)})`;
  const takes = PACK_ORDERS.map((order) => totalWords(set.totals, order)).join(", ");
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}: ${odds}; ${takes}${set.isWithin ? "" : ", over the limits"}.`;
}

export const PackingSets = { Picture, Table, Reading };
