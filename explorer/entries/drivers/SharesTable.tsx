import { For, Show } from "solid-js";
import { byWeight, inHundredths, plusMinus } from "../../../engine/answers/drivers/driversWords.ts";
import { SHARES } from "../../../engine/answers/drivers/rows.ts";
import type { DriverLine, DriversReport } from "../../../engine/drivers/driversReport.ts";

const BAR_PX = 216;

/** Of what the lowest charge differs by: the part of each factor alone as a lined bar, with all it does together with others as the open end. */
export function SharesTable(props: { report: DriversReport }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label="What decides the lowest charge">
      <table class="drivers-table">
        <caption>What the lowest charge depends on: share of what it differs by from member to member</caption>
        <thead>
          <tr>
            <th scope="col">{SHARES.name.head}</th>
            <td class="bar-cell bar-head">
              <svg width={BAR_PX + 24} height="20" aria-hidden="true">
                <For each={[0, 0.5, 1]}>
                  {(share) => (
                    <text
                      class="axis-value"
                      x={8 + share * BAR_PX}
                      y="15"
                      text-anchor={share === 1 ? "end" : share === 0 ? "start" : "middle"}
                    >
                      {share * 100} {share === 1 ? "%" : ""}
                    </text>
                  )}
                </For>
              </svg>
            </td>
            <th scope="col">{SHARES.alone.head} (lined)</th>
            <th scope="col">{SHARES.together.head} (open)</th>
            <th scope="col">{SHARES.holdsTogether.head}</th>
          </tr>
        </thead>
        <tbody>
          <For each={byWeight(props.report)}>
            {(line) => (
              <tr>
                <th scope="row">{line.name}</th>
                <td class="bar-cell">
                  <Show when={line.margin}>{(margin) => <ShareBar margin={margin()} />}</Show>
                </td>
                <td>{line.margin === null ? "–" : <Sampled of={line.margin.first} />}</td>
                <td>{line.margin === null ? "–" : <Sampled of={line.margin.total} />}</td>
                <td>{line.holds === null ? "–" : <Sampled of={line.holds.total} />}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

function Sampled(props: { of: { value: number; plusMinus: number } }) {
  return (
    <>
      {inHundredths(props.of.value)} <span class="drivers-sure">{plusMinus(props.of.plusMinus)}</span>
    </>
  );
}

function ShareBar(props: { margin: NonNullable<DriverLine["margin"]> }) {
  const px = (share: number) => 8 + BAR_PX * Math.min(1, Math.max(0, share));
  const { first, total } = props.margin;
  return (
    <svg width={BAR_PX + 24} height="24" aria-hidden="true">
      <line class="axis-line" x1={px(0)} x2={px(0)} y1="0" y2="24" />
      <rect class="driver-total" x={px(0)} y="5" width={px(total.value) - px(0)} height="14" />
      <rect class="driver-first" x={px(0)} y="5" width={px(Math.min(first.value, total.value)) - px(0)} height="14" />
      <path class="driver-lines" d={lines(px(0), px(Math.min(first.value, total.value)))} />
      <path
        class="driver-interval"
        d={`M${px(total.value - total.plusMinus)} 12H${px(total.value + total.plusMinus)}`}
      />
    </svg>
  );
}

/** Slanted lines inside a bar, so that it is told by pattern too. */
function lines(from: number, to: number): string {
  const strokes: string[] = [];
  for (let x = from + 4; x < to - 1; x += 6) strokes.push(`M${x.toFixed(1)} 19L${Math.min(to, x + 5).toFixed(1)} 5`);
  return strokes.join("");
}
