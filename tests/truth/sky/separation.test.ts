import { expect, test } from "vitest";
import { record, recordSkipped } from "../record.ts";
import {
  engineLight,
  hourMeans,
  type MeasuredMonth,
  measuredLight,
  measuredMonths,
  modelLight,
  planeDays,
  type StepLight,
  scaledErbsLight,
} from "./measuredMonths.ts";
import * as published from "./separationModels.ts";

/**
 * Beam and sky light from GHI alone, against measured hours: published models, what the engine had, and what it has. With
 * DUSKLINE_SHOW set it prints the comparison that docs/model.md quotes.
 */
const SOURCE =
  "measured hours: DTU Lyngby, KU Leuven, NREL SRRL Golden, Sandia Albuquerque; plane by Hay and Davies (1980)";
const TILT_DEG = 40;
/** Months of low sun, 51 to 56° north. */
const WINTER = ["lyngby-dk-2024-11", "leuven-be-2021-01", "lyngby-dk-2025-02"];

const models: Record<string, (month: MeasuredMonth) => StepLight> = {
  "Erbs 1982": (month) => modelLight(month, published.erbs),
  "Skartveit and Olseth 1987": (month) => modelLight(month, published.skartveit87),
  "Perez 1992 (DIRINT)": (month) => modelLight(month, published.dirint),
  "Skartveit and Olseth 1998": (month) => modelLight(month, published.skartveit98),
  "Ridley 2010": (month) => modelLight(month, published.ridley),
  "Engerer 2015, hourly": (month) => modelLight(month, published.engerer),
  "scaled Erbs, as before": scaledErbsLight,
  engine: engineLight,
};

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const rms = (values: readonly number[]) => Math.sqrt(mean(values.map((value) => value * value)));

/** Total over measured, and the root mean square of days over their mean. */
function planeError(months: readonly MeasuredMonth[], model: (month: MeasuredMonth) => StepLight, tiltDeg = TILT_DEG) {
  const got = months.flatMap((month) => planeDays(month, model(month), tiltDeg));
  const real = months.flatMap((month) => planeDays(month, measuredLight(month), tiltDeg));
  return { total: mean(got) / mean(real) - 1, daily: rms(got.map((value, i) => value - real[i]!)) / mean(real) };
}

/** Hours with the sun wholly up, beam by the model less measured, W/m². */
function beamErrors(month: MeasuredMonth, model: (month: MeasuredMonth) => StepLight): number[] {
  const dni = hourMeans(model(month).dniWm2);
  const sine = hourMeans(month.clear.sinElevation);
  const up = hourMeans(month.clear.ghiWm2.map((ghi) => (ghi > 0 ? 1 : 0)));
  return dni.flatMap((value, i) =>
    month.isThere[i] && up[i] === 1 && sine[i]! > 0.05 ? [value - month.dniWm2[i]!] : [],
  );
}

const HEIGHTS = [2, 6, 10, 15, 25, 40, 90];
const INDICES = [0, 0.3, 0.5, 0.7, 0.9, 1.1, 99];
const FEWEST = 8;

/** Mean beam of classes of sun height and index, measured and by the model. */
function classes(months: readonly MeasuredMonth[], model: (month: MeasuredMonth) => StepLight) {
  const cells = new Map<string, { measured: number[]; got: number[] }>();
  for (const month of months) {
    const dni = hourMeans(model(month).dniWm2);
    dni.forEach((value, i) => {
      const height = HEIGHTS.findLastIndex((edge) => month.heightDeg[i]! >= edge);
      if (!month.isThere[i] || height < 0 || month.clearGhiWm2[i]! < 3) return;
      const index = INDICES.findLastIndex((edge) => month.index[i]! >= edge);
      const name = `${HEIGHTS[height]}–${HEIGHTS[height + 1]}°, ${INDICES[index]}–${INDICES[index + 1]}`;
      const cell = cells.get(name) ?? { measured: [], got: [] };
      cells.set(name, cell);
      cell.measured.push(month.dniWm2[i]!);
      cell.got.push(value);
    });
  }
  return [...cells]
    .filter(([, { got }]) => got.length >= FEWEST)
    .map(([name, { measured, got }]) => ({ name, n: got.length, measured: mean(measured), got: mean(got) }));
}
/** How far a class is off, in units of what is allowed: 15 W/m² or a quarter. */
const off = ({ measured, got }: { measured: number; got: number }) =>
  Math.abs(got - measured) / Math.max(15, 0.25 * measured);

const months = measuredMonths();
const winter = months.filter(({ name }) => WINTER.includes(name));
const others = months.filter(({ name }) => !WINTER.includes(name));
const isHere = months.length > 0;
const skipped = "the measured hours may be used but not handed on, and do not lie beside this checkout";

if (isHere && process.env.DUSKLINE_SHOW !== undefined) {
  const percent = (share: number) => (100 * share).toFixed(1);
  for (const [name, model] of Object.entries(models)) {
    const pooled = planeError(winter, model);
    const cells = months.map((month) => {
      const { total, daily } = planeError([month], model);
      return `${month.name} ${percent(total)}/${(100 * daily).toFixed(2)}/${rms(beamErrors(month, model)).toFixed(0)}`;
    });
    const worst = classes(months, model).filter((cell) => off(cell) > 1);
    console.log(
      `${name}: winter ${percent(pooled.total)} % / ${percent(pooled.daily)} %; DNI rms of all ${rms(months.flatMap((month) => beamErrors(month, model))).toFixed(1)}; ${cells.join(", ")}; classes off: ${worst.map(({ name, n, measured, got }) => `${name} (${n}): ${got.toFixed(0)} for ${measured.toFixed(0)}`).join("; ")}`,
    );
  }
  for (const cell of classes(months, engineLight))
    console.log(cell.name, cell.n, cell.measured.toFixed(0), cell.got.toFixed(0));
}

if (!isHere) {
  recordSkipped({ what: "beam and sky light split from GHI against measured hours", source: SOURCE, skipped });
  console.warn(`Skipped: the split of GHI is not compared with measured hours (${skipped}).`);
}
const row = { source: SOURCE, n: months.reduce((sum, { isThere }) => sum + isThere.length, 0) };

test.skipIf(!isHere)("under low winter suns a tilted plane gets what it got", () => {
  const { total, daily } = planeError(winter, models.engine!);
  const before = planeError(winter, scaledErbsLight);
  const rivals = Object.values(models).slice(0, 6);
  record({
    ...row,
    what: "light on a plane tilted by 40° from GHI alone, three winter months at 51 to 56° N, total",
    tolerance: 4,
    why: `wanted; the scaled Erbs beam that this took over from: ${(100 * before.total).toFixed(1)}`,
    worst: 100 * Math.abs(total),
    unit: "%",
  });
  record({
    ...row,
    what: "light on a plane tilted by 40° from GHI alone, the same winter months, rms of days over their mean",
    tolerance: 12,
    why: `hours of GHI do not tell more (wanted: 10; any split leaves 10 to 11, docs/fits/low-sun.md); published models ${rivals.map((model) => (100 * planeError(winter, model).daily).toFixed(1)).join(", ")}, and before ${(100 * before.daily).toFixed(1)}`,
    worst: 100 * daily,
    unit: "%",
  });
  expect(Math.abs(total)).toBeLessThan(0.04);
  expect(daily).toBeLessThan(0.12);
  expect(daily).toBeLessThan(0.6 * before.daily);
});

test.skipIf(!isHere)("no class of sun height and clear-sky index has a beam far from the measured one", () => {
  const worst = Math.max(...classes(months, models.engine!).map(off));
  const met = (model: (month: MeasuredMonth) => StepLight) =>
    classes(months, model).filter((cell) => off(cell) > 1).length;
  record({
    ...row,
    what: "beam split from GHI, mean of each class of sun height (2° to 90° in six) and clear-sky index (six), over what is allowed (15 W/m² or a quarter)",
    tolerance: 1,
    why: `wanted; classes that miss by other models: ${Object.entries(models)
      .slice(0, 7)
      .map(([name, model]) => `${name} ${met(model)}`)
      .join(", ")}`,
    worst,
    unit: "",
    n: classes(months, models.engine!).length,
  });
  const inWinter = (model: (month: MeasuredMonth) => StepLight) =>
    classes(winter, model).filter((cell) => off(cell) > 1);
  record({
    ...row,
    what: "the same of three winter months alone: classes that miss",
    tolerance: 2,
    why: `15–25° with an index of 0.5 to 0.7 (34 hours, 23 W/m² measured) is too bright with every model; others: ${Object.entries(
      models,
    )
      .slice(0, 7)
      .map(([name, model]) => `${name} ${inWinter(model).length}`)
      .join(", ")}`,
    worst: inWinter(models.engine!).length,
    unit: "",
    n: classes(winter, models.engine!).length,
  });
  expect(inWinter(models.engine!).length).toBeLessThanOrEqual(2);
  for (const { measured, got } of inWinter(models.engine!)) expect(Math.abs(got - measured)).toBeLessThan(40);
  expect(met(models.engine!)).toBe(0);
  expect(met(scaledErbsLight)).toBeGreaterThan(8);
  expect(worst).toBeLessThan(1);
});

test.skipIf(!isHere)("in months of high sun nothing is lost", () => {
  const worse = others.map(
    (month) => planeError([month], models.engine!).daily - planeError([month], scaledErbsLight).daily,
  );
  record({
    ...row,
    what: "light on a plane tilted by 40° from GHI alone, five months of higher sun, rms of days over their mean: more than before",
    tolerance: 0.1,
    why: "within a tenth of a percent in the month that gains least (0.4 % of a desert May), up to 2 % less in the others",
    worst: 100 * Math.max(0, ...worse),
    unit: "%",
  });
  expect(100 * Math.max(...worse)).toBeLessThan(0.1);
  for (const month of months) {
    expect(rms(beamErrors(month, models.engine!)), month.name).toBeLessThan(rms(beamErrors(month, scaledErbsLight)));
  }
});

test.skipIf(!isHere)(
  "over all hours the beam is nearer to the measured one than that of any published model tried",
  () => {
    const errors = Object.fromEntries(
      Object.entries(models).map(([name, model]) => [name, months.flatMap((month) => beamErrors(month, model))]),
    );
    const own = errors.engine!;
    const rivals = Object.entries(errors).filter(([name]) => name !== "engine");
    const why = rivals.map(([name, values]) => `${name} ${rms(values).toFixed(1)}`).join(", ");
    record({
      ...row,
      what: "DNI split from GHI, rms",
      tolerance: 69,
      why,
      worst: rms(own),
      unit: "W/m²",
      n: own.length,
    });
    record({
      ...row,
      what: "DNI split from GHI, bias",
      tolerance: 5,
      why: `before: ${mean(errors["scaled Erbs, as before"]!).toFixed(1)}`,
      worst: Math.abs(mean(own)),
      unit: "W/m²",
      n: own.length,
    });
    expect(own.length).toBeGreaterThan(2700);
    expect(rms(own)).toBeLessThan(68);
    expect(Math.abs(mean(own))).toBeLessThan(5);
    for (const [name, values] of rivals) expect(rms(own), name).toBeLessThan(rms(values));
  },
);

test.skipIf(!isHere)("a haze that was guessed wrong costs little under a low sun", () => {
  for (const linkeTurbidity of [2, 4, 5]) {
    const hazy = measuredMonths(linkeTurbidity).filter(({ name }) => WINTER.includes(name));
    const { total, daily } = planeError(hazy, models.engine!);
    expect(Math.abs(total), `turbidity ${linkeTurbidity}`).toBeLessThan(0.04);
    expect(daily, `turbidity ${linkeTurbidity}`).toBeLessThan(0.13);
    expect(planeError(hazy, scaledErbsLight).daily).toBeGreaterThan(0.2);
  }
});
