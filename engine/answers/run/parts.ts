import { range, sum } from "d3";
import { energy } from "../../words/numbers.ts";
import type { RunPicture } from "./runPicture.ts";
import { incomingAt, servedAt } from "./strataLayout.ts";

/** A layer of a stacked power: what it is called, how it is drawn, and where it lies at each step. */
export interface Part {
  readonly name: string;
  /** Names the pattern and the edge in strata.css. */
  readonly look: string;
  readonly lowW: (i: number) => number;
  readonly highW: (i: number) => number;
  readonly wh: number;
}

const SUN_LOOKS = ["sun-solid", "sun-dots", "sun-lines", "sun-slope"];

function wh(picture: RunPicture, ofW: (i: number) => number): number {
  return (sum(range(picture.steps), ofW) * picture.stepMs) / 3_600_000;
}

/** A name that fits at the end of a line: the name itself, or the short name of the document. */
function shortName(part: { id: string; name: string }): string {
  return part.name.length <= 12 ? part.name : part.id;
}

/** What comes in, group upon group; above it what could not be used is marked, and a contour shows what shade took. */
export function incomingParts(picture: RunPicture): { stack: Part[]; spilled: Part; shade: Part } {
  const below = (index: number) => (i: number) => sum(picture.incoming.slice(0, index), (part) => part.powerW[i]!);
  let panels = 0;
  const stack = picture.incoming.map((part, index): Part => {
    const isPanel = part.shadeLossW !== null;
    return {
      name: shortName(part),
      look: isPanel ? SUN_LOOKS[panels++ % SUN_LOOKS.length]! : "source",
      lowW: below(index),
      highW: below(index + 1),
      wh: wh(picture, (i) => part.powerW[i]!),
    };
  });
  const panelsW = (i: number) => incomingAt(picture, i).panelsW;
  return {
    stack,
    spilled: {
      name: "spilled, bank full",
      look: "spilled",
      lowW: (i) => Math.max(0, panelsW(i) - picture.spilledW[i]!),
      highW: panelsW,
      wh: wh(picture, (i) => picture.spilledW[i]!),
    },
    shade: {
      name: "taken by shade",
      look: "shade",
      lowW: panelsW,
      highW: (i) => incomingAt(picture, i).unshadedW,
      wh: wh(picture, (i) => incomingAt(picture, i).unshadedW - panelsW(i)),
    },
  };
}

/** What the loads got, and on top what they did not get. */
export function loadParts(picture: RunPicture): Part[] {
  const { alwaysW, usedW, sendingW, unservedW } = picture;
  const served = (i: number) => servedAt(picture, i);
  const part = (name: string, look: string, lowW: (i: number) => number, highW: (i: number) => number): Part => ({
    name,
    look,
    lowW,
    highW,
    wh: wh(picture, (i) => highW(i) - lowW(i)),
  });
  return [
    part(
      "always on",
      "load-dots",
      () => 0,
      (i) => alwaysW[i]!,
    ),
    part(
      "when used",
      "load-lines",
      (i) => alwaysW[i]!,
      (i) => alwaysW[i]! + usedW[i]!,
    ),
    part("sending", "load-slope", (i) => served(i) - sendingW[i]!, served),
    part("unserved", "unserved", served, (i) => served(i) + unservedW[i]!),
  ];
}

export const partWords = (part: Part) => ({ figure: energy(part.wh), words: part.name });
