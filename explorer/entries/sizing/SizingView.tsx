import { createMemo, createSignal, For, Show } from "solid-js";
import { sizesOf } from "../../../engine/answers/sizing/ask.ts";
import { mapStations } from "../../../engine/answers/sizing/mapStations.ts";
import { sizeCsv } from "../../../engine/answers/sizing/sizeCsv.ts";
import { sizeDrawing } from "../../../engine/answers/sizing/sizeDrawing.ts";
import type { SizePicture } from "../../../engine/answers/sizing/sizePicture.ts";
import { axisWords, cellChanges, presentCell, readCell } from "../../../engine/answers/sizing/sizingWords.ts";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import { withLabels } from "../../../engine/fields/fieldWords.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import type { SizeOutcome } from "../../../engine/size/sizeTally.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { SizingChoices } from "./SizingChoices.tsx";
import { SizingMap } from "./SizingMap.tsx";
import { SizingTable } from "./SizingTable.tsx";
import "../../../engine/drawing/sizing.css";
import { fadesWhile } from "../../parts/fadesWhile.ts";

/** How big a bank, how much panel: the odds over two numbers of a scenario, and the least that meets a target. */
export function SizingView(props: EntryProps<"sizing">) {
  const found = () => sizesOf(props.page, props.doc);
  const picture = createMemo(() => found().result);
  const document = createMemo(() => props.page.document(props.doc.scenario));
  return (
    <div class="margin-left sizing" ref={fadesWhile(() => found().stale)}>
      <Show when={picture()}>{(map) => <p class="verdict data">{map().answer}</p>}</Show>
      <p class="choices no-print">
        <ScenarioChoice
          page={props.page}
          label="Scenario that is sized"
          value={props.doc.scenario}
          onPick={(scenario) =>
            // Another scenario may have neither these panels nor these sizes.
            props.edit(
              { scenario, targetIn100: props.doc.targetIn100, autonomyDays: props.doc.autonomyDays },
              "scenario",
            )
          }
        />
        <CsvButton name={name(props)} what="sizes" result={picture()} csv={sizeCsv} />
      </p>
      <Progress of={[found()]} />
      <Problems of={[found()]} />
      <Show when={document() !== null && picture()}>
        {(map) => (
          <>
            <MapAndTable {...props} picture={map()} document={document()!} />
            <SizingChoices
              document={document()!}
              doc={props.doc}
              across={{ at: map().report.x.at, values: map().report.x.values }}
              up={map().report.y}
              edit={props.edit}
            />
          </>
        )}
      </Show>
    </div>
  );
}

const name = (props: EntryProps<"sizing">) => props.page.scenario(props.doc.scenario)?.name ?? "plan";

function MapAndTable(props: EntryProps<"sizing"> & { picture: SizePicture; document: ScenarioInput }) {
  const report = () => props.picture.report;
  const xAxis = createMemo(() => axisWords(props.document, report().x));
  const yAxis = createMemo(() => (report().y === null ? null : axisWords(props.document, report().y!)));
  const [chosen, setChosen] = createSignal<{ row: number; column: number } | null>(null);
  const [made, setMade] = createSignal<string | null>(null);
  const isOn = ({ row, column }: { row: number; column: number }) =>
    row < report().rows.length && column < report().x.values.length;
  const at = createMemo(() => {
    const asked = chosen();
    return asked !== null && isOn(asked) ? asked : presentCell(props.picture);
  });
  const cell = () => report().rows[at().row]!.cells[at().column]!;
  const map = createMemo(() =>
    sizeDrawing(
      props.picture,
      xAxis(),
      yAxis(),
      mapStations(props.page, props.document, report()),
      props.page.room().isPhone ? [328, 300] : [560, 400],
    ),
  );
  const read = (row: number, column: number) => {
    const { row: r, column: c } = at();
    if (row !== r || column !== c) setMade(null);
    setChosen({ row, column });
  };
  const make = (row: number, column: number) => {
    read(row, column);
    const wanted = report().rows[row]!.cells[column]!;
    const changes = cellChanges(props.picture, wanted);
    if (changes.length === 0) {
      setMade("That is the scenario as it stands.");
      return;
    }
    const changed = applyChanges(props.document, changes);
    if (!changed.ok) return;
    const base = props.page.scenario(props.doc.scenario)?.name ?? "Scenario";
    const sizes = [
      ...(wanted.x === report().x.present ? [] : [xAxis().short(wanted.x)]),
      ...(wanted.y === null || wanted.y === report().y?.present ? [] : [yAxis()!.short(wanted.y)]),
    ];
    const given = props.page.branch(props.doc.scenario, props.id, changes, `${base}, ${sizes.join(", ")}`);
    if (given === null) return;
    const words = changesInWords(changes, props.document, changed.document as ScenarioInput);
    setMade(`${given} is a scenario now, based on ${base}: ${words.join("; ")}. Undo takes it away again.`);
  };
  return (
    <>
      <div class="size-section">
        <Show when={map()}>
          {(drawing) => <SizingMap drawing={drawing()} report={report()} chosen={cell()} onRead={read} onMake={make} />}
        </Show>
        <div class="size-said data">
          <ol class="size-options">
            <For each={props.picture.options}>{({ sentence }) => <li>{sentence}</li>}</For>
          </ol>
          <For each={props.picture.more}>{(sentence) => <p>{sentence}</p>}</For>
        </div>
      </div>
      <p class="size-reading" aria-live="polite">
        {readCell(cell(), props.picture.cellWords[at().row]![at().column]!)}
      </p>
      <p class="acts-row no-print">
        <button type="button" class="act" onClick={() => make(at().row, at().column)}>
          Make this a scenario
        </button>
        <span>
          <Show when={map()}>Or click it on the map. </Show>In the table, arrow keys go from cell to cell and Enter
          makes one.
        </span>
      </p>
      <p class="size-made" role="status">
        {made()}
      </p>
      <div class="data">
        <SizingTable
          picture={props.picture}
          xAxis={xAxis()}
          yAxis={yAxis()}
          row={at().row}
          column={at().column}
          onRead={read}
          onMake={make}
        />
        <p class="size-foot">
          With the interval that {report().members} members leave open. The stair is the target.{" "}
          <Show when={hasOpen(report().rows)}>~ the sample leaves it open. </Show>
          {withLabels(props.picture.fixed.join(" "))}
        </p>
      </div>
    </>
  );
}

const hasOpen = (rows: readonly { readonly cells: readonly SizeOutcome[] }[]) =>
  rows.some(({ cells }) => cells.some(({ isOpen }) => isOpen));

/** "560 Ah for 95" for the index. */
export function sizingSummary(props: EntryProps<"sizing">): string {
  const { result } = sizesOf(props.page, props.doc);
  const document = props.page.document(props.doc.scenario);
  if (result === null || document === null) return "working";
  const { report } = result;
  const row = report.y === null ? report.rows[0]! : report.rows.find(({ y }) => y === report.y?.present);
  const cell = row?.smallest ?? report.smallest;
  const target = `for ${Number((100 * report.targetShare).toPrecision(4))} in 100`;
  return cell === null
    ? `nothing looked at holds ${target}`
    : `${axisWords(document, report.x).short(cell.x)} ${target}`;
}
