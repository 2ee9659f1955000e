import { clockAt } from "../../ruler/rulerClock.ts";
import { ampHours, percent, volts, watts } from "../../words/numbers.ts";
import type { RunPicture } from "./runPicture.ts";
import { incomingAt, servedAt } from "./strataLayout.ts";

/** Everything at one instant: charge at it, powers of the step that it lies in. */
export interface Reading {
  readonly ms: number;
  readonly step: number;
  /** "Sun 11 07:45" */
  readonly when: string;
  readonly chargeShare: number;
  readonly chargeAh: number;
  readonly incomingW: number;
  readonly shadeLossW: number;
  readonly spilledW: number;
  readonly servedW: number;
  readonly unservedW: number;
  /** The same as a sentence, for ears and for the line under a phone's chart. */
  readonly words: string;
}

/** What a run has at an instant within the event. */
export function readingAt(picture: RunPicture, ms: number): Reading {
  const at = (ms - picture.startMs) / picture.stepMs;
  const step = Math.min(picture.steps - 1, Math.max(0, Math.floor(at)));
  const from = picture.chargeShare[step]!;
  const chargeShare = from + (picture.chargeShare[step + 1]! - from) * Math.min(1, at - step);
  const { givenW, panelsW, unshadedW } = incomingAt(picture, step);
  const { day, clock } = clockAt(picture.ruler, ms);
  const reading = {
    ms,
    step,
    when: `${day} ${clock}`,
    chargeShare,
    chargeAh: chargeShare * picture.fullAh,
    incomingW: givenW,
    shadeLossW: unshadedW - panelsW,
    spilledW: picture.spilledW[step]!,
    servedW: servedAt(picture, step),
    unservedW: picture.unservedW[step]!,
  };
  return { ...reading, words: sentence(picture, reading) };
}

function sentence(picture: RunPicture, reading: Omit<Reading, "words">): string {
  const { step } = reading;
  const parts = [
    `${reading.when}: charge ${percent(reading.chargeShare)}, ${ampHours(reading.chargeAh)}`,
    `coming in ${watts(reading.incomingW)}`,
  ];
  if (picture.incoming.length > 1) {
    parts.push(...picture.incoming.map((part) => `${part.name} ${watts(part.powerW[step]!)}`));
  }
  if (reading.shadeLossW >= 0.5) parts.push(`shade takes ${watts(reading.shadeLossW)}`);
  if (reading.spilledW >= 0.5) parts.push(`spilled ${watts(reading.spilledW)}`);
  parts.push(`loads get ${watts(reading.servedW)}`);
  if (reading.unservedW >= 0.5) parts.push(`unserved ${watts(reading.unservedW)}`);
  for (const radio of picture.radios) {
    if (radio.volts[step]! > 0) parts.push(`${radio.name} sees ${volts(radio.volts[step]!)} on peaks`);
  }
  return `${parts.join("; ")}.`;
}
