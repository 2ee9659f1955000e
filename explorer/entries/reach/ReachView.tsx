import { createMemo, createSignal, Show } from "solid-js";
import { reachOf } from "../../../engine/answers/reach/ask.ts";
import type { ReachPicture } from "../../../engine/answers/reach/reachPicture.ts";
import { openRows, partWords, reachSentence } from "../../../engine/answers/reach/reachWords.ts";
import { reachCsv } from "../../../engine/answers/reach/rows.ts";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { ReachChoices } from "./ReachChoices.tsx";
import { ReachLanes } from "./ReachLanes.tsx";
import { ReachTogether } from "./ReachTogether.tsx";
import { type ReachChosen, reachChoosable, readChosen } from "./reachChosen.ts";
import "../../../engine/drawing/reach.css";

const nameOf = (props: EntryProps<"reach">) => props.page.scenario(props.doc.scenario)?.name ?? "plan";

/** What it would take for a scenario to hold often enough: lanes of all levers, pairs and threes; or what can stay at home. */
export function ReachView(props: EntryProps<"reach">) {
  const found = () => reachOf(props.page, props.doc);
  const picture = createMemo(() => found().result);
  return (
    <div class="margin-left reach" ref={fadesWhile(() => found().stale)}>
      <Show when={picture()}>
        {(known) => (
          <p class="verdict data">
            <SaidWords words={reachSentence(known().report, nameOf(props), props.page.look(props.doc.scenario))} />
          </p>
        )}
      </Show>
      <p class="choices no-print">
        <ScenarioChoice
          page={props.page}
          label="Scenario that is to hold"
          value={props.doc.scenario}
          // What is locked about one plan says nothing of another.
          onPick={(scenario) => props.edit({ ...props.doc, scenario, locked: [] }, "scenario")}
        />
        <CsvButton name={nameOf(props)} what="reach" result={picture()} csv={({ report }) => reachCsv(report)} />
      </p>
      <ReachChoices page={props.page} doc={props.doc} edit={props.edit} />
      <Progress of={[found()]} />
      <Problems of={[found()]} />
      <Show when={picture()}>{(known) => <Levers {...props} picture={known()} />}</Show>
    </div>
  );
}

function Levers(props: EntryProps<"reach"> & { picture: ReachPicture }) {
  const report = () => props.picture.report;
  const [asked, setAsked] = createSignal<string | null>(null);
  const [made, setMade] = createSignal<string | null>(null);
  const choosable = createMemo(() => reachChoosable(report()));
  const chosen = (): ReachChosen | null =>
    choosable().find(({ key }) => key === asked()) ??
    choosable().find(({ key }) => key === `alone ${openRows(report())[0]?.id}`) ??
    choosable()[0] ??
    null;
  const choose = (key: string) => {
    setMade(null);
    setAsked(key);
  };
  const lock = (id: string) => {
    const { locked } = props.doc;
    const next = locked.includes(id) ? locked.filter((each) => each !== id) : [...locked, id];
    props.edit({ ...props.doc, locked: next }, "lock");
  };
  const make = ({ changes, short }: ReachChosen) => {
    const document = props.page.document(props.doc.scenario);
    const changed = document === null ? null : applyChanges(document, changes);
    if (document === null || changed === null || !changed.ok) return;
    const base = nameOf(props);
    const given = props.page.branch(props.doc.scenario, props.id, changes, `${base}, ${short}`);
    if (given === null) return;
    const words = changesInWords(changes, document, changed.document as ScenarioInput);
    setMade(`${given} is a scenario now, based on ${base}: ${words.join("; ")}. Undo takes it away again.`);
  };
  const isWhole = () => !report().isOpen.amounts;
  const lanes = { chosen: () => chosen()?.key ?? null, onChoose: choose };
  return (
    <>
      <div class="data">
        <ReachLanes report={report()} {...lanes} onLock={lock} />
      </div>
      <Show when={!isWhole()}>
        <p class="reach-note">A first look at {report().members} skies; all of them follow.</p>
      </Show>
      <Show when={chosen()}>
        {(one) => (
          <>
            <p class="reach-reading" aria-live="polite">
              {readChosen(one(), report())}
            </p>
            <p class="acts-row no-print">
              <button type="button" class="act" onClick={() => make(one())}>
                Make this a scenario
              </button>
            </p>
          </>
        )}
      </Show>
      <p class="reach-made" role="status">
        {made()}
      </p>
      <div class="data reach-pair">
        <ReachTogether title="Two together" rows={report().pairs} prefix="pair" {...lanes} />
        <Show when={report().threes.length > 0}>
          <details>
            <summary>Three together, {report().threes.length}</summary>
            <ReachTogether title="Three together" rows={report().threes} prefix="three" {...lanes} />
          </details>
        </Show>
      </div>
      <p class="reach-note">
        Of 100 skies so many hold, {report().members} in all, the same for every row. What does without nothing comes
        first, then by what counts most; a turn of a panel group counts as 3 min.
        <Show when={report().isOpen.together}> Two and three together are being worked out.</Show>
      </p>
    </>
  );
}

/** "a bigger bank: 435 Ah" for the index. */
export function reachSummary(props: EntryProps<"reach">): string {
  const report = reachOf(props.page, props.doc).result?.report;
  if (report === undefined) return "working";
  if (report.reaches) return `holds in ${inHundred(report.base)} of 100`;
  const [first] = openRows(report);
  if (first !== undefined) return partWords(first);
  if (report.isOpen.together) return "working";
  return report.pairs.length + report.threes.length > 0 ? "no one thing alone" : "nothing here reaches it";
}
