import { max, range } from "d3";
import { type EndLabel, spread, type UnplacedLabel } from "../../drawing/endLabels.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import { endMs } from "../../ruler/readingTime.ts";
import type { Look } from "../../words/look.ts";
import { percent, volts } from "../../words/numbers.ts";
import { incomingParts, loadParts, type Part, partWords } from "./parts.ts";
import type { RunPicture } from "./runPicture.ts";
import type { StrataLayout, Stratum } from "./strataLayout.ts";
import { stepMs } from "./strataPaths.ts";

/** A label that stands over its part, because that lies too long before the end for a leader. */
export interface InnerLabel {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Longest leader, as a share of the ruler, and px that it may always have. */
const LONGEST_LEADER = { share: 0.4, px: 240 };
/** Room that a label over its part takes to either side. */
const INNER_HALF_PX = 110;

/** The names and last figures of everything that is drawn, stratum by stratum. */
export function endLabels(
  picture: RunPicture,
  before: RunPicture | null,
  look: Look,
  layout: StrataLayout,
  scale: TimeScale,
): EndLabel[] {
  const chargeAt = (run: RunPicture, words: string, as: string): UnplacedLabel => ({
    x: scale.x(endMs(run)),
    y: layout.charge.y(run.chargeShare.at(-1)!),
    figure: percent(run.chargeShare.at(-1)!),
    words,
    look: as,
    dotted: false,
  });
  const { stack, spilled, shade } = incomingParts(picture);
  const charge = [chargeAt(picture, before === null ? "at the end" : "with this edit", look)];
  if (before !== null) charge.push(chargeAt(before, "before, dotted", "before"));
  return [
    ...spread(charge, layout.charge.top, layout.charge.bottom),
    ...partLabels([...stack, spilled, shade], picture, layout.incoming, scale),
    ...partLabels(loadParts(picture), picture, layout.load, scale),
    ...(layout.volts === null ? [] : voltLabels(picture, layout.volts, scale)),
  ];
}

function partLabels(parts: readonly Part[], picture: RunPicture, stratum: Stratum, scale: TimeScale): EndLabel[] {
  const wanted = parts.flatMap((part): UnplacedLabel[] => {
    if (part.wh < 0.5) return [];
    const i = anchorStep(part, picture.steps, picture.stepMs / 3_600_000);
    const isLast = i === picture.steps - 1;
    if (isFar(scale.x(stepMs(picture, i + 0.5)), picture, scale)) return [];
    const middleW = part.look === "shade" ? part.highW(i) : (part.lowW(i) + part.highW(i)) / 2;
    return [
      {
        x: isLast ? scale.x(endMs(picture)) : scale.x(stepMs(picture, i + 0.5)),
        y: stratum.y(middleW),
        ...partWords(part),
        look: part.look,
        dotted: !isLast,
      },
    ];
  });
  return spread(wanted, stratum.top + 4, stratum.bottom - 2);
}

/** Labels for parts that are only there long before the end. */
export function innerLabels(picture: RunPicture, layout: StrataLayout, scale: TimeScale): InnerLabel[] {
  const { stack, spilled, shade } = incomingParts(picture);
  const over = (parts: readonly Part[], stratum: Stratum, topW: (i: number) => number) =>
    parts.flatMap((part): InnerLabel[] => {
      if (part.wh < 0.5) return [];
      const i = anchorStep(part, picture.steps, picture.stepMs / 3_600_000);
      const x = scale.x(stepMs(picture, i + 0.5));
      if (!isFar(x, picture, scale)) return [];
      const { figure, words } = partWords(part);
      return [{ x, y: Math.max(stratum.top + 8, stratum.y(topW(i)) - 8), text: `${figure} ${words}` }];
    });
  const loads = loadParts(picture);
  return stacked([
    ...over([...stack, spilled, shade], layout.incoming, shade.highW),
    ...over(loads, layout.load, loads.at(-1)!.highW),
  ]);
}

/** Labels that would cover one another stand in rows instead. */
function stacked(labels: readonly InnerLabel[]): InnerLabel[] {
  const placed: InnerLabel[] = [];
  for (const label of labels) {
    let { y } = label;
    while (placed.some((other) => Math.abs(other.x - label.x) < 2 * INNER_HALF_PX && Math.abs(other.y - y) < 18))
      y += 18;
    placed.push({ ...label, y });
  }
  return placed;
}

function isFar(x: number, picture: RunPicture, scale: TimeScale): boolean {
  return scale.x(endMs(picture)) - x > Math.max(LONGEST_LEADER.px, LONGEST_LEADER.share * scale.widthPx);
}

/** The last step, if the part is there; else where it is tallest in the last six hours in which it is there. */
function anchorStep(part: Part, steps: number, stepH: number): number {
  const tall = (i: number) => part.highW(i) - part.lowW(i);
  const most = max(range(steps), tall) ?? 0;
  if (tall(steps - 1) > 0.2 * most) return steps - 1;
  let last = steps - 1;
  while (last > 0 && tall(last) <= 0.2 * most) last--;
  const around = range(Math.max(0, last - Math.round(6 / stepH)), last + 1);
  return around.reduce((best, i) => (tall(i) > tall(best) ? i : best), last);
}

function voltLabels(picture: RunPicture, stratum: Stratum, scale: TimeScale): EndLabel[] {
  const wanted = picture.radios.map((radio): UnplacedLabel => {
    const last = radio.volts.findLastIndex((value) => value > 0);
    return {
      x: scale.x(stepMs(picture, last + 1)),
      y: stratum.y(radio.volts[last] ?? radio.minimumV),
      figure: volts(Math.min(...radio.volts.filter((value) => value > 0))),
      words: `least, ${radio.name.length <= 16 ? radio.name : `${radio.name.slice(0, 15)}…`}`,
      look: "radio",
      dotted: false,
    };
  });
  const [first] = picture.radios;
  wanted.push({
    x: scale.x(endMs(picture)),
    y: stratum.y(first!.minimumV),
    figure: volts(first!.minimumV),
    words: "it needs",
    look: "unserved",
    dotted: false,
  });
  return spread(wanted, stratum.top, stratum.bottom);
}
