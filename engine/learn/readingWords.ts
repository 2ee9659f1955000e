import type { Reading } from "./reading.ts";

/** A reading as a person would say it: "82 %, panels 60 W, 2026-10-08 cloudy". Who and when are left to whoever shows it. */
export function readingWords(reading: Reading): string {
  const { chargeShare, outAh, restV, errorShare, panelsW, loadA, sky } = reading;
  const error = errorShare === undefined ? "" : ` ± ${number(100 * errorShare)} %`;
  const said = [
    chargeShare === undefined ? null : `${number(100 * chargeShare)} %${error}`,
    outAh === undefined ? null : `${number(outAh)} Ah out${error}`,
    restV === undefined ? null : `${restV.toFixed(2)} V at rest`,
    panelsW === undefined ? null : `panels ${number(panelsW)} W`,
    loadA === undefined ? null : `load ${number(loadA)} A`,
    sky === undefined ? null : `${sky.date} ${sky.word}`,
  ];
  return said.filter((each) => each !== null).join(", ");
}

const number = (value: number) => String(Number(value.toPrecision(3)));
