import { area, curveStepAfter, line, max, scaleLinear } from "d3";
import { dayWords } from "../run/localClock.ts";
import type { Trace } from "../run/trace.ts";

const LEFT = 64;
const RIGHT = 216;
const CHARGE_TOP = 104;
const CHARGE_HEIGHT = 240;
const POWER_TOP = 392;
const POWER_HEIGHT = 160;

/** Text as XML allows it: signs that mean something are spelt out, and what XML cannot hold at all is left out. */
const escaped = (text: string) =>
  text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "")
    .replace(/[&<>"]/g, (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[sign]!);

/** Breaks a sentence into lines of at most `longest` characters. */
function lines(sentence: string, longest: number): string[] {
  const done: string[] = [];
  for (const word of sentence.split(" ")) {
    const last = done.length - 1;
    if (last >= 0 && done[last]!.length + word.length < longest) done[last] += ` ${word}`;
    else done.push(word);
  }
  return done;
}

/** A trace as a picture that stands alone: the verdict, the charge over nights and days with its reserve, and sun against load. */
export function traceSvg(trace: Trace): string {
  const { prepared, record, chargeShare } = trace;
  const { grid, bank } = prepared;
  const endMs = grid.startMs + grid.steps * grid.stepMs;
  const days = (endMs - grid.startMs) / 86_400_000;
  const width = Math.max(480, Math.min(1300, Math.round(216 * days)));
  const x = scaleLinear([grid.startMs, endMs], [LEFT, LEFT + width]);
  const charge = scaleLinear([0, 1], [CHARGE_TOP + CHARGE_HEIGHT, CHARGE_TOP]);
  const mostW = Math.max(1, max(record.solarW) ?? 0, max(record.demandW) ?? 0);
  const power = scaleLinear([0, mostW], [POWER_TOP + POWER_HEIGHT, POWER_TOP]).nice(4);
  const stepMs = (i: number) => grid.startMs + i * grid.stepMs;
  const said = lines(trace.verdict.sentences[0]!, Math.floor(width / 9));
  const bottom = POWER_TOP + POWER_HEIGHT;
  const { name, place } = prepared.scenario;
  const foot = lines(`${name} · ${place.name} · local time ${grid.zone}`, Math.floor((width + RIGHT) / 8));

  const nights = prepared.nights
    .map(
      (night) =>
        `<rect class="night" x="${x(night.startMs).toFixed(1)}" y="${CHARGE_TOP - 16}" width="${(x(night.endMs) - x(night.startMs)).toFixed(1)}" height="${bottom - CHARGE_TOP + 16}"/>`,
    )
    .join("");
  const midnights = grid.dates
    .map((date, day) => {
      const first = grid.localDay.indexOf(day);
      const at = x(stepMs(first));
      const rule = day === 0 ? "" : `<path class="midnight" d="M${at.toFixed(1)} ${CHARGE_TOP - 16}V${bottom}"/>`;
      const room = x(stepMs(grid.localDay.lastIndexOf(day) + 1)) - at;
      return room < 70
        ? rule
        : `${rule}<text class="day" x="${(at + 6).toFixed(1)}" y="${CHARGE_TOP - 22}">${escaped(dayWords(date))}</text>`;
    })
    .join("");
  const chargePath =
    line<number>(
      (_, i) => x(stepMs(i)),
      (share) => charge(share),
    )(Array.from(chargeShare)) ?? "";
  const powers = (values: Float64Array) => [...values, values.at(-1) ?? 0];
  const solar =
    area<number>(
      (_, i) => x(stepMs(i)),
      () => power(0),
      (watts) => power(watts),
    ).curve(curveStepAfter)(powers(record.solarW)) ?? "";
  const load =
    line<number>(
      (_, i) => x(stepMs(i)),
      (watts) => power(watts),
    ).curve(curveStepAfter)(powers(record.demandW)) ?? "";
  const reserve = charge(bank.reserveAh / bank.fullAh);
  const teeth = Array.from(
    { length: Math.floor(width / 9) },
    (_, k) => `M${LEFT + 4 + 9 * k} ${reserve.toFixed(1)}v5`,
  ).join("");
  const level = (value: number, text: string) =>
    `<path class="grid" d="M${LEFT} ${charge(value).toFixed(1)}h${width}"/><text class="tick" x="${LEFT - 8}" y="${(charge(value) + 5).toFixed(1)}">${text}</text>`;
  const watts = power
    .ticks(3)
    .map(
      (value) =>
        `<path class="grid" d="M${LEFT} ${power(value).toFixed(1)}h${width}"/><text class="tick" x="${LEFT - 8}" y="${(power(value) + 5).toFixed(1)}">${value}</text>`,
    );
  const lowestX = x(trace.verdict.lowestMs);
  const lowestY = charge(trace.verdict.lowestShare);
  const end = LEFT + width + 10;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${LEFT + width + RIGHT} ${bottom + 24 + 24 * foot.length}" width="${LEFT + width + RIGHT}" height="${bottom + 24 + 24 * foot.length}" role="img" aria-label="${escaped(trace.verdict.sentences.join(" "))}">
<style>
text{font:16px "Radio Canada",sans-serif;fill:#14213a}
.answer{font-size:20px;font-weight:600}.tick{text-anchor:end}.small{fill:#485669}
.night{fill:#e3e7ef}.grid{stroke:#dadfe3;fill:none}.midnight{stroke:#485669;stroke-dasharray:1 3;fill:none}
.charge{stroke:#174a86;stroke-width:2.6;fill:none;stroke-linejoin:round}.reserve{stroke:#14213a;stroke-width:1.4;fill:none}
.sun{fill:#f3cb6c;stroke:#b98413}.load{stroke:#485669;stroke-width:1.4;fill:none}.ring{fill:#fcfcf9;stroke:#14213a;stroke-width:1.4}
</style>
<rect width="100%" height="100%" fill="#fcfcf9"/>
${said.map((text, k) => `<text class="answer" x="${LEFT}" y="${28 + 24 * k}">${escaped(text)}</text>`).join("")}
${nights}${midnights}
${level(1, "100 %")}${level(0.5, "50")}${level(0, "0")}
<path class="reserve" d="M${LEFT} ${reserve.toFixed(1)}h${width}${teeth}"/><text x="${end}" y="${(reserve + 5).toFixed(1)}">reserve ${Math.round((100 * bank.reserveAh) / bank.fullAh)} %</text>
<path class="charge" d="${chargePath}"/><circle class="ring" cx="${lowestX.toFixed(1)}" cy="${lowestY.toFixed(1)}" r="4"/>
<text x="${end}" y="${(endLabelY(charge(chargeShare.at(-1)!), reserve) + 5).toFixed(1)}">charge, ${Math.round(100 * chargeShare.at(-1)!)} % at the end</text>
${watts.join("")}
<path class="sun" d="${solar}"/><path class="load" d="${load}"/>
<text x="${end}" y="${POWER_TOP + 16}">sun, W (filled)</text><text x="${end}" y="${POWER_TOP + 40}">load, W (line)</text>
${foot.map((text, k) => `<text class="small" x="${LEFT}" y="${bottom + 28 + 24 * k}">${escaped(text)}</text>`).join("")}
</svg>
`;
}

/** Keeps the charge's label clear of the reserve's. */
function endLabelY(chargeY: number, reserveY: number): number {
  if (Math.abs(chargeY - reserveY) >= 22) return chargeY;
  return chargeY <= reserveY ? reserveY - 22 : reserveY + 22;
}
