import { createMemo, createSignal, Show } from "solid-js";
import { packingOf } from "../../../engine/answers/packing/ask.ts";
import type { PackingPicture } from "../../../engine/answers/packing/packingPicture.ts";
import { packingNotes, packingSentence, setWords, totalWords } from "../../../engine/answers/packing/packingWords.ts";
import { packingCsv } from "../../../engine/answers/packing/rows.ts";
import { ownedOfPlans } from "../../../engine/packing/ownedOfPlans.ts";
import { OwnedList as OwnedSchema, type OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { OwnedList } from "./OwnedList.tsx";
import { PackingChoices } from "./PackingChoices.tsx";
import { PackingSets } from "./PackingSets.tsx";
import { PrintListAct } from "./PrintListAct.tsx";
import "../../../engine/drawing/packing.css";
import "./packing.css";

const nameOf = (props: EntryProps<"packing">) => props.page.scenario(props.doc.scenario)?.name ?? "plan";

/** What to take along: what the club has, every set of it over weight and minutes, one proposed, and the list to pack by. */
export function PackingView(props: EntryProps<"packing">) {
  const found = () => packingOf(props.page, props.doc);
  const picture = createMemo(() => found().result);
  const things = createMemo((): readonly OwnedThing[] => {
    const read = OwnedSchema.safeParse(props.doc.owned ?? ownedOfPlans(documentsOf(props)));
    return read.success ? read.data : [];
  });
  const [asked, setAsked] = createSignal<number | null>(null);
  const put = (owned: readonly OwnedThing[], label: string) => {
    setAsked(null);
    return props.edit({ ...props.doc, owned: [...owned] }, label);
  };
  return (
    <div class="margin-left packing" ref={fadesWhile(() => found().stale)}>
      <Show when={picture()}>
        {(known) => (
          <p class="verdict data">
            <SaidWords words={packingSentence(known())} />
          </p>
        )}
      </Show>
      <p class="choices no-print">
        <ScenarioChoice
          page={props.page}
          label="Scenario that is packed for"
          value={props.doc.scenario}
          onPick={(scenario) => props.edit({ ...props.doc, scenario }, "scenario")}
        />
        <CsvButton name={nameOf(props)} what="packing" result={picture()} csv={packingCsv} />
        <PrintListAct page={props.page} doc={props.doc} picture={picture()} />
      </p>
      <PackingChoices page={props.page} doc={props.doc} edit={props.edit} />
      <Running {...props} />
      <Problems of={[found()]} />
      <div class="packing-pair">
        <OwnedList
          things={things()}
          isOwn={props.doc.owned !== undefined}
          name={nameOf(props)}
          picture={isOf(picture(), things()) ? picture() : null}
          asked={asked()}
          onAsk={setAsked}
          onPut={put}
        />
        <Show when={picture()}>{(known) => <PackingSets.Picture picture={known()} />}</Show>
      </div>
      <Show when={picture()}>
        {(known) => (
          <>
            <PackingSets.Table picture={known()} asked={asked()} onAsk={setAsked} />
            <PackingSets.Reading {...props} picture={known()} asked={asked()} documents={documentsOf(props)} />
            <Notes picture={known()} />
          </>
        )}
      </Show>
    </div>
  );
}

/** Places in an answer are those of the list that it was worked out from. */
const isOf = (picture: PackingPicture | null, things: readonly OwnedThing[]) =>
  picture !== null && JSON.stringify(picture.things) === JSON.stringify(things);

function documentsOf({ page, doc }: EntryProps<"packing">) {
  return [doc.scenario, ...doc.lent].flatMap((id) => page.document(id) ?? []);
}

/** How far it is, and what ends it. */
function Running(props: EntryProps<"packing">) {
  const found = () => packingOf(props.page, props.doc);
  const isStopped = () => props.doc.stopped === true;
  const stop = () => props.edit({ ...props.doc, stopped: true }, "stop");
  const goOn = () => {
    const { stopped: _, ...doc } = props.doc;
    props.edit(doc, "go on");
  };
  return (
    <div class="packing-running no-print">
      <Progress of={[found()]} />
      <Show when={isStopped()}>
        <p>Stopped: no set is run until you say so.</p>
      </Show>
      <Show when={isStopped() || found().progress !== null}>
        <button type="button" class="act" onClick={() => (isStopped() ? goOn() : stop())}>
          {isStopped() ? "Run the sets" : "Stop"}
        </button>
      </Show>
    </div>
  );
}

function Notes(props: { picture: PackingPicture }) {
  return (
    <p class="packing-note">
      {packingNotes(props.picture).join(" ")}
      <Show when={props.picture.report.isOpen}> A first look; all skies follow.</Show>
    </p>
  );
}

/** "battery, 280 Ah and 2 × folding panel: 40 kg" for the index. */
export function packingSummary(props: EntryProps<"packing">): string {
  if (props.doc.stopped === true) return "stopped";
  const picture = packingOf(props.page, props.doc).result;
  if (picture === null) return "working";
  const { proposed } = picture.report;
  if (proposed === null) return "nothing on the list reaches it";
  const holds = proposed.holds === null ? "" : `${inHundred(proposed.holds)} of 100, `;
  return `${setWords(proposed, picture.things)}: ${holds}${totalWords(proposed.totals, "mass")}`;
}
