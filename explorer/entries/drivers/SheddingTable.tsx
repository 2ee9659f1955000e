import { For, Show } from "solid-js";
import { signed } from "../../../engine/answers/drivers/driversWords.ts";
import { SHEDDING } from "../../../engine/answers/drivers/rows.ts";
import type { DriversReport } from "../../../engine/drivers/driversReport.ts";

const BAR_PX = 160;

/** What switching one load off for the whole event gains, largest gain first. */
export function SheddingTable(props: { report: DriversReport }) {
  const px = (share: number) => 8 + BAR_PX * Math.max(0, Math.min(1, share));
  const base = () => props.report.holds.share;
  return (
    <Show when={props.report.shedding.length > 0}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="What to switch off first">
        <table class="drivers-table">
          <caption>Switched off for the whole event, one at a time: of 100 members so many hold</caption>
          <thead>
            <tr>
              <th scope="col">{SHEDDING.name.head}</th>
              <td class="bar-cell" />
              <th scope="col">{SHEDDING.holds.head}</th>
              <th scope="col">{SHEDDING.gained.head}</th>
              <th scope="col">{SHEDDING.margin.head}</th>
              <th scope="col">{SHEDDING.later.head}</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.report.shedding}>
              {(line) => (
                <tr>
                  <th scope="row">{line.name}</th>
                  <td class="bar-cell">
                    <svg width={BAR_PX + 24} height="24" aria-hidden="true">
                      <rect class="driver-total" x={px(0)} y="5" width={px(base()) - px(0)} height="14" />
                      <rect
                        class="driver-gain"
                        x={px(Math.min(base(), line.holds.share))}
                        y="5"
                        width={Math.abs(px(line.holds.share) - px(base()))}
                        height="14"
                      />
                    </svg>
                  </td>
                  <td class="sum">{SHEDDING.holds.cell(line)}</td>
                  <td>
                    {signed(100 * line.holdsGain.value)}{" "}
                    <span class="drivers-sure">±{(100 * line.holdsGain.plusMinus).toFixed(1)}</span>
                  </td>
                  <td>{signed(100 * line.marginGain.value)}</td>
                  <td>{SHEDDING.later.cell(line)}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
        <p class="drivers-note">
          Bar: as planned open, gained filled. <MiddleFailing report={props.report} />
        </p>
      </section>
    </Show>
  );
}

function MiddleFailing(props: { report: DriversReport }) {
  return (
    <Show when={props.report.medianFailing} fallback="No member fails, so nothing comes under the reserve later.">
      {(middle) => (
        <>
          Until the reserve: for the member in the middle of those that fail, number {middle().member}, which comes
          under it after {middle().failsAfterH.toFixed(1)} hours. {props.report.members} rows, {props.report.runs} runs,
          seed {props.report.seed}; ± holds the true value in 95 of 100 samples.
        </>
      )}
    </Show>
  );
}
