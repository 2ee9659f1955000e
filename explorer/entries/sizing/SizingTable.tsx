import { createEffect, For, Show } from "solid-js";
import type { SizePicture } from "../../../engine/answers/sizing/sizePicture.ts";
import type { AxisWords } from "../../../engine/answers/sizing/sizingWords.ts";
import { missesByLoads, type SizeOutcome } from "../../../engine/size/sizeTally.ts";
import { inHundred, oddsRange } from "../../../engine/words/oddsWords.ts";

/**
 * The odds in each cell, with a stair where the target lies: the map for those who do not see it, and the handout. One cell at a time
 * can be focused; arrow keys go from cell to cell, Enter makes a scenario of it.
 */
export function SizingTable(props: {
  picture: SizePicture;
  xAxis: AxisWords;
  yAxis: AxisWords | null;
  row: number;
  column: number;
  onRead: (row: number, column: number) => void;
  onMake: (row: number, column: number) => void;
}) {
  const report = () => props.picture.report;
  const rows = () =>
    report()
      .rows.map((row, r) => ({ row, r }))
      .reverse(); // the map has more of it at the top
  let table!: HTMLTableElement;
  let takesFocus = false;
  createEffect(() => {
    const at = `[data-cell="${props.row}-${props.column}"]`;
    if (takesFocus) table.querySelector<HTMLElement>(at)?.focus();
    takesFocus = false;
  });
  const go = (row: number, column: number) => {
    const height = report().rows.length;
    const width = report().x.values.length;
    takesFocus = true;
    props.onRead(Math.min(height - 1, Math.max(0, row)), Math.min(width - 1, Math.max(0, column)));
  };
  const press = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const { row, column } = props;
    const to: Record<string, () => void> = {
      ArrowRight: () => go(row, column + 1),
      ArrowLeft: () => go(row, column - 1),
      ArrowUp: () => go(row + 1, column),
      ArrowDown: () => go(row - 1, column),
      Home: () => go(row, 0),
      End: () => go(row, report().x.values.length - 1),
      PageUp: () => go(report().rows.length - 1, column),
      PageDown: () => go(0, column),
      Enter: () => props.onMake(row, column),
    };
    const act = to[event.key];
    if (act === undefined) return;
    event.preventDefault();
    act();
  };
  /** A stair runs along the edges between a cell that meets the target and a neighbour that does not. */
  const meets = (row: number, column: number) => report().rows[row]?.cells[column]?.meets;
  const stair = (row: number, column: number) => ({
    "stair-left": meets(row, column - 1) === !meets(row, column),
    "stair-below": meets(row - 1, column) === !meets(row, column),
  });
  return (
    <div class="wide size-wide">
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a grid whose cells are gone through by arrow keys is still a table */}
      <table class="size-table" role="grid" ref={table} onKeyDown={press} aria-label="Odds of holding, of 100 skies">
        <caption>
          Of 100 skies so many hold. Across: {props.xAxis.title}
          <Show when={props.yAxis}>{(axis) => <>; down: {axis().title}</>}</Show>
        </caption>
        <thead>
          <tr>
            <td />
            <For each={report().x.values}>
              {(value) => (
                <th scope="col">
                  {props.xAxis.tick(value)}
                  <Show when={value === report().x.present}>
                    <span class="size-now"> now</span>
                  </Show>
                </th>
              )}
            </For>
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {({ row, r }) => (
              <tr>
                <th scope="row">
                  {row.y === null ? "holds" : props.yAxis!.tick(row.y)}
                  <Show when={row.y !== null && row.y === report().y?.present}>
                    <span class="size-now"> now</span>
                  </Show>
                </th>
                <For each={row.cells}>
                  {(cell, c) => (
                    <td
                      // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: the cells of that grid
                      role="gridcell"
                      data-cell={`${r}-${c()}`}
                      tabIndex={r === props.row && c() === props.column ? 0 : -1}
                      aria-selected={r === props.row && c() === props.column}
                      classList={{ "size-meets": cell.meets, ...stair(r, c()) }}
                      onFocus={() => props.onRead(r, c())}
                    >
                      <CellWords cell={cell} targetShare={props.picture.report.targetShare} />
                    </td>
                  )}
                </For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </div>
  );
}

function CellWords(props: { cell: SizeOutcome; targetShare: number }) {
  const short = () => {
    const words = inHundred(props.cell.holds);
    return words.replace("more than ", ">").replace("fewer than ", "<");
  };
  return (
    <>
      {short()}
      {props.cell.isOpen ? "~" : ""}
      {missesByLoads(props.cell, props.targetShare) ? "*" : ""}{" "}
      <span class="size-range">{oddsRange(props.cell.holds)}</span>
    </>
  );
}
