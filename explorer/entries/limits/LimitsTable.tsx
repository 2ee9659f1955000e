import { For, type JSX, Show } from "solid-js";
import {
  briefQuantity,
  limitWords,
  linesOf,
  marginWords,
  rulesOf,
  VERDICTS,
  valueWords,
} from "../../../engine/answers/limits/limitsWords.ts";
import type { LimitLine } from "../../../engine/checks/limitLine.ts";
import type { LimitsReport } from "../../../engine/checks/limits.ts";

/** Every line with its limit, worst first; what is within stays folded. */
export function LimitsTable(props: { report: LimitsReport; isPhone: boolean; id: string }) {
  const rules = () => rulesOf(props.report);
  const ruleOf = (line: LimitLine) => rules().findIndex(({ words }) => words === line.rule.words) + 1;
  const openRule = () => {
    const rules = document.getElementById(`${props.id}-rules`);
    if (rules instanceof HTMLDetailsElement) rules.open = true;
  };
  const rule = (line: LimitLine) => (
    <a href={`#${props.id}-rule-${ruleOf(line)}`} onClick={openRule}>
      rule {ruleOf(line)}
    </a>
  );
  return (
    <>
      <For each={VERDICTS.filter(({ verdict }) => linesOf(props.report, verdict).length > 0)}>
        {({ verdict, title }) => (
          <Folded isFolded={verdict === "within"} title={`${title} (${linesOf(props.report, verdict).length})`}>
            <Show
              when={props.isPhone}
              fallback={<WideTable lines={linesOf(props.report, verdict)} title={title} rule={rule} />}
            >
              <ul class="limit-list">
                <For each={linesOf(props.report, verdict)}>
                  {(line) => (
                    <li>
                      <p>
                        <Glyph line={line} /> <strong>{line.about}</strong>, {briefQuantity(line)}
                      </p>
                      <p>
                        {valueWords(line.value, line.unit)}; {limitWords(line)}; {marginWords(line)} ({rule(line)})
                      </p>
                      <Show when={verdict !== "within"}>
                        <p>{line.change}</p>
                      </Show>
                    </li>
                  )}
                </For>
              </ul>
            </Show>
          </Folded>
        )}
      </For>
      <details id={`${props.id}-rules`}>
        <summary>Rules and where they come from</summary>
        <ol class="limit-rules">
          <For each={rules()}>
            {({ words, source }, i) => (
              <li id={`${props.id}-rule-${i() + 1}`}>
                {words} <span class="limit-source">Source: {source}.</span>
              </li>
            )}
          </For>
        </ol>
      </details>
    </>
  );
}

function Folded(props: { isFolded: boolean; title: string; children: JSX.Element }) {
  return (
    <Show
      when={props.isFolded}
      fallback={
        <section>
          <h3>{props.title}</h3>
          {props.children}
        </section>
      }
    >
      <details>
        <summary>{props.title}</summary>
        {props.children}
      </details>
    </Show>
  );
}

function WideTable(props: { lines: readonly LimitLine[]; title: string; rule: (line: LimitLine) => JSX.Element }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide" tabIndex={0} aria-label={`${props.title}, table`}>
      <table class="limit-table">
        <caption class="unseen">{props.title}</caption>
        <colgroup>
          <For each={["limit-what", "limit-value", "limit-limit", "limit-margin", "limit-change", "limit-rule"]}>
            {(name) => <col class={name} />}
          </For>
        </colgroup>
        <thead>
          <tr>
            <th scope="col">Where and what</th>
            <th scope="col">Value</th>
            <th scope="col">Limit</th>
            <th scope="col">Margin</th>
            <th scope="col">What to change</th>
            <th scope="col">Rule</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.lines}>
            {(line) => (
              <tr>
                <th scope="row">
                  <Glyph line={line} /> <strong>{line.about}</strong>, {briefQuantity(line)}
                </th>
                <td class="sum">{valueWords(line.value, line.unit)}</td>
                <td>{limitWords(line)}</td>
                <td>{marginWords(line)}</td>
                <td>{line.change}</td>
                <td>{props.rule(line)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

/** Over a filled triangle, close an open one, not stated or assumed a dashed ring, within a dot: told by shape, and by the title over them. */
function Glyph(props: { line: LimitLine }) {
  const shape = {
    over: "M8 1L15.5 15H.5Z",
    close: "M8 2L14.6 14.4H1.4Z",
    unknown: "M8 2a6 6 0 1 0 .01 0Z",
    assumed: "M8 2a6 6 0 1 0 .01 0Z",
    within: "M8 4a4 4 0 1 0 .01 0Z",
  };
  return (
    <svg class={`limit-glyph limit-${props.line.verdict}`} width="16" height="16" aria-hidden="true">
      <path d={shape[props.line.verdict]} />
    </svg>
  );
}
