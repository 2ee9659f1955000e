import { For, Show } from "solid-js";
import { byWeight, signed } from "../../../engine/answers/drivers/driversWords.ts";
import { HIGH_END, LOW_END, SHARES } from "../../../engine/answers/drivers/rows.ts";
import type { DriverLine, DriversReport } from "../../../engine/drivers/driversReport.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";

const BAR_PX = 176;

/** What holds when one factor is at its low or its high end and everything else stays as drawn. */
export function EndsTable(props: { report: DriversReport }) {
  const px = (share: number) => 8 + BAR_PX * share;
  const ended = () => byWeight(props.report).filter(({ low, high }) => low !== null && high !== null);
  const spanOf = ({ low, high }: DriverLine) => [low!.holds.share, high!.holds.share] as const;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="What if it were low or high">
      <table class="drivers-table">
        <caption>
          What if: of 100 members so many hold with one thing at its low (ring) or high end (dot); one in ten lies
          beyond either
        </caption>
        <thead>
          <tr>
            <th scope="col">{SHARES.name.head}</th>
            <th scope="col">{LOW_END.value.head}</th>
            <th scope="col">{LOW_END.holds.head}</th>
            <td class="bar-cell bar-head">
              <svg width={BAR_PX + 24} height="20" aria-hidden="true">
                <For each={[0, 0.5, 1]}>
                  {(share) => (
                    <text
                      class="axis-value"
                      x={px(share)}
                      y="15"
                      text-anchor={share === 1 ? "end" : share === 0 ? "start" : "middle"}
                    >
                      {share * 100}
                    </text>
                  )}
                </For>
              </svg>
            </td>
            <th scope="col">{LOW_END.holds.head}</th>
            <th scope="col">{HIGH_END.value.head}</th>
            <th scope="col">{LOW_END.margin.head}</th>
          </tr>
        </thead>
        <tbody>
          <For each={ended()}>
            {(line) => (
              <tr>
                <th scope="row">{line.name}</th>
                <td>{LOW_END.value.cell(line)}</td>
                <td class="sum">{LOW_END.holds.cell(line)}</td>
                <td class="bar-cell">
                  <svg width={BAR_PX + 24} height="24" aria-hidden="true">
                    <line
                      class="axis-line"
                      x1={px(props.report.holds.share)}
                      x2={px(props.report.holds.share)}
                      y1="0"
                      y2="24"
                    />
                    <path class="driver-span" d={`M${px(spanOf(line)[0])} 12H${px(spanOf(line)[1])}`} />
                    <circle class="driver-low" cx={px(spanOf(line)[0])} cy="12" r="5" />
                    <circle class="driver-high" cx={px(spanOf(line)[1])} cy="12" r="5" />
                  </svg>
                </td>
                <td class="sum">{HIGH_END.holds.cell(line)}</td>
                <td>{HIGH_END.value.cell(line)}</td>
                <td>
                  {signed(100 * line.low!.marginGain.value)} to {signed(100 * line.high!.marginGain.value)}
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Show when={ended().length > 0}>
        <p class="drivers-note">The upright line is the plan as drawn: {inHundred(props.report.holds)} of 100 hold.</p>
      </Show>
    </section>
  );
}
