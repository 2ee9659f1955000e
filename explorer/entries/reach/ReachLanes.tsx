import { createSignal, For, Show } from "solid-js";
import { lanePx } from "../../../engine/answers/reach/reachDrawing.ts";
import { priceHead } from "../../../engine/answers/reach/reachWords.ts";
import { ALONE, SPARE } from "../../../engine/answers/reach/rows.ts";
import { REACH_ORDERS } from "../../../engine/reach/reachOrder.ts";
import type { ReachReport, ReachRow } from "../../../engine/reach/reachReport.ts";
import { Lane } from "./Lane.tsx";
import { PriceCell } from "./PriceCell.tsx";

/** Length of a lane; on a phone its picture is stretched to the card. */
export const LANE_PX = 200;

/** Of what is not enough alone, so many are shown at first: the nearest. */
const MOST_NEAR = 6;

interface LanesProps {
  report: ReachReport;
  chosen: () => string | null;
  onChoose: (key: string) => void;
}

/** One lane a lever, in two groups: what reaches the target alone, and what does not; or what can stay at home and what may not. */
export function ReachLanes(props: LanesProps & { onLock: (id: string) => void }) {
  const rows = () => (props.report.reaches ? props.report.spare : props.report.alone);
  const group = (reaches: boolean) => rows().filter((row) => row.reaches === reaches);
  const [showsAll, setShowsAll] = createSignal(false);
  // What is locked stays to be seen.
  const near = () => group(false).filter((row, k) => showsAll() || k < MOST_NEAR || row.isLocked);
  const left = () => group(false).length - near().length;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label={props.report.reaches ? "What can stay at home" : "One thing alone"}>
      <table class="reach-table">
        <caption class="unseen">
          {props.report.reaches
            ? "What can stay at home or be left undone, and what may not"
            : "Each lever alone: the smallest amount that reaches the target, or the most of it"}
        </caption>
        <Show when={group(true).length > 0}>
          <Group
            {...props}
            rows={group(true)}
            title={props.report.reaches ? SPARE.name.head : ALONE.name.head}
            amount={props.report.reaches ? "as much as can" : "smallest that does it"}
            withScale
          />
        </Show>
        <Show when={group(false).length > 0}>
          <Group
            {...props}
            rows={near()}
            title={props.report.reaches ? "Has to come along" : "Not enough alone"}
            amount={props.report.reaches ? "without it" : "at its most"}
            withScale={group(true).length === 0}
          />
        </Show>
      </table>
      <Show when={left() > 0 || showsAll()}>
        <p class="reach-rest no-print">
          <button type="button" class="act" aria-expanded={showsAll()} onClick={() => setShowsAll(!showsAll())}>
            {showsAll() ? "Show the nearest alone" : `Show ${left()} more, which bring less`}
          </button>
        </p>
      </Show>
    </section>
  );
}

function Group(
  props: LanesProps & {
    rows: readonly ReachRow[];
    title: string;
    amount: string;
    withScale: boolean;
    onLock: (id: string) => void;
  },
) {
  const prefix = () => (props.report.reaches ? "spare" : "alone");
  return (
    <tbody class={props.withScale ? "reach-does" : "reach-short-of-it"}>
      <tr class="reach-head">
        <th scope="col">{props.title}</th>
        <th scope="col" class="reach-words">
          {props.amount}
        </th>
        <td class="reach-lane">
          <Show when={props.withScale}>
            <Scale targetShare={props.report.targetShare} />
          </Show>
        </td>
        <th scope="col">{ALONE.holds.head}</th>
        <Show
          when={props.report.reaches || props.rows.some(({ reaches }) => reaches)}
          fallback={
            <th scope="col" class="reach-why" colSpan={4}>
              why
            </th>
          }
        >
          <For each={REACH_ORDERS}>{(order) => <th scope="col">{priceHead(order)}</th>}</For>
        </Show>
        <td />
      </tr>
      <For each={props.rows}>
        {(row) => (
          <tr
            aria-selected={props.chosen() === `${prefix()} ${row.id}`}
            class={row.isLocked ? "reach-locked" : undefined}
          >
            <th scope="row">
              <button type="button" class="reach-name" onClick={() => props.onChoose(`${prefix()} ${row.id}`)}>
                {row.name}
              </button>
            </th>
            <td class="reach-words">{row.words}</td>
            <td class="reach-lane">
              <Lane row={row} report={props.report} lengthPx={LANE_PX} />
            </td>
            <td class="sum">{ALONE.holds.cell(row)}</td>
            <Show
              when={row.reaches || props.report.reaches}
              fallback={
                <td class="reach-why" colSpan={4}>
                  {row.kind === "reserve" ? "a choice, not a cure" : row.why}
                </td>
              }
            >
              <For each={REACH_ORDERS}>{(order) => <PriceCell price={row.price} order={order} />}</For>
            </Show>
            <td class="no-print">
              <Show when={!props.report.reaches}>
                <button
                  type="button"
                  class="reach-lock"
                  aria-pressed={row.isLocked}
                  aria-label={`${row.isLocked ? "Unlock" : "Lock"}: ${row.name}`}
                  onClick={() => props.onLock(row.id)}
                >
                  {row.isLocked ? "locked" : "lock"}
                </button>
              </Show>
            </td>
          </tr>
        )}
      </For>
    </tbody>
  );
}

function Scale(props: { targetShare: number }) {
  const ticks = () => [0, 0.5, 1].filter((share) => Math.abs(share - props.targetShare) > 0.15);
  const x = (share: number) => lanePx(share, LANE_PX);
  return (
    <svg viewBox={`0 0 ${LANE_PX} 20`} width={LANE_PX} height="20" aria-hidden="true">
      <For each={ticks()}>
        {(share) => (
          <text class="axis-value" x={x(share)} y="15" text-anchor="middle">
            {100 * share}
          </text>
        )}
      </For>
      <text class="bar-name" x={x(props.targetShare)} y="15" text-anchor="middle">
        {+(100 * props.targetShare).toFixed(1)}
      </text>
    </svg>
  );
}
