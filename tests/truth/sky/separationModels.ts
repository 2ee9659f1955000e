import { readFileSync } from "node:fs";
import { pressureShare } from "../../../engine/sky/clearSky.ts";
import { erbsDiffuseShare } from "./erbsDiffuseShare.ts";

/** What published models of the diffuse share go by; one value per hour with light. */
export interface Hours {
  readonly elevationM: number;
  /** GHI over extraterrestrial light on the level, and the cloudless sky's. */
  readonly kt: readonly number[];
  readonly clearKt: readonly number[];
  /** The day's, of the same. */
  readonly dayKt: readonly number[];
  readonly heightDeg: readonly number[];
  readonly solarHour: readonly number[];
  /** Positions of the hour before and after on the same day; the other where one is missing, else the hour itself. */
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** Diffuse share of GHI of each hour, 0…1. */
export type SeparationModel = (hours: Hours) => number[];

const unit = (value: number) => Math.max(0, Math.min(1, value));
const sine = (deg: number) => Math.sin((deg * Math.PI) / 180);

/** D. G. Erbs, S. A. Klein, J. A. Duffie, Solar Energy 28 (1982) 293–302, eq. 1 */
export const erbs: SeparationModel = ({ kt }) => kt.map(erbsDiffuseShare);

/** N. A. Engerer, Solar Energy 116 (2015) 215–237, model 2, with the hourly coefficients of J. M. Bright and N. A. Engerer, J. Renewable Sustainable Energy 11 (2019) 033701 */
export const engerer: SeparationModel = ({ kt, clearKt, solarHour, heightDeg }) =>
  kt.map((k, i) => {
    const sum =
      -5.3169 + 8.5084 * k + 0.013241 * solarHour[i]! + 0.0074356 * (90 - heightDeg[i]!) - 3.0329 * (clearKt[i]! - k);
    const enhanced = k > 0 ? Math.max(0, 1 - clearKt[i]! / k) : 0;
    return unit(-0.0097539 + 1.0097539 / (1 + Math.exp(sum)) + 0.56403 * enhanced);
  });

/** B. Ridley, J. Boland, P. Lauret, Renewable Energy 35 (2010) 478–483, eq. 10 */
export const ridley: SeparationModel = ({ kt, dayKt, solarHour, heightDeg, before, after }) =>
  kt.map((k, i) => {
    const neighbours = 0.5 * (kt[before[i]!]! + kt[after[i]!]!);
    const sum = -5.38 + 6.63 * k + 0.006 * solarHour[i]! - 0.007 * heightDeg[i]! + 1.75 * dayKt[i]! + 1.31 * neighbours;
    return 1 / (1 + Math.exp(sum));
  });

/** A. Skartveit and J. A. Olseth, Solar Energy 38 (1987) 271–274 */
export const skartveit87: SeparationModel = ({ kt, heightDeg }) =>
  kt.map((k, i) => {
    const fall = Math.exp(-0.06 * heightDeg[i]!);
    const clear = 0.87 - 0.56 * fall;
    const least = 0.15 + 0.43 * fall;
    const share = (at: number) => {
      const bend = unit(0.5 * (1 + Math.sin(Math.PI * ((at - 0.2) / (clear - 0.2) - 0.5))));
      return 1 - (1 - least) * (0.27 * Math.sqrt(bend) + 0.73 * bend * bend);
    };
    if (k < 0.2) return 1;
    const top = 1.09 * clear;
    return unit(k <= top ? share(k) : 1 - (top * (1 - share(top))) / k);
  });

/** A. Skartveit, J. A. Olseth, M. E. Tuft, Solar Energy 63 (1998) 173–183, without snow on the ground */
export const skartveit98: SeparationModel = ({ kt, heightDeg, before, after }) => {
  const clear = heightDeg.map((h) => 0.83 - 0.56 * Math.exp(-0.06 * h));
  const relative = kt.map((k, i) => k / clear[i]!);
  return kt.map((at, i) => {
    const h = heightDeg[i]!;
    const k = Math.max(1e-6, at);
    const least = h > 1.4 ? 0.07 + (0.046 * (90 - h)) / (h + 3) : 1;
    const share = (of: number) => {
      const bend = unit(0.5 * (1 + Math.sin(Math.PI * ((of - 0.22) / (clear[i]! - 0.22) - 0.5))));
      return 1 - (1 - least) * (0.11 * Math.sqrt(bend) + 0.15 * bend + 0.74 * bend * bend);
    };
    const second = 0.95 * clear[i]!;
    const sky = (share(second) * second) / (1 - second);
    const most = (0.81 ** ((1 / sine(h)) ** 0.6) + sky) / (1 + sky);
    const atMost = (sky * (1 - most)) / most;
    let steady = 1;
    if (k > most) steady = 1 - (most * (1 - atMost)) / k;
    else if (k > second) steady = (sky * (1 - k)) / k;
    else if (k > 0.22) steady = share(k);
    const [last, next] = [relative[before[i]!]! - relative[i]!, relative[after[i]!]! - relative[i]!];
    const varies = Math.sqrt((last * last + next * next) / 2);
    const turn = 0.56 - 0.32 * Math.exp(-0.06 * h);
    const [left, right] = [(k - 0.14) / (turn - 0.14), (k - turn) / 0.71];
    let more = 0;
    if (k >= 0.14 && k < turn) more = -3 * left * left * (1 - left) * varies ** 1.3;
    else if (k >= turn && k < turn + 0.71) more = 3 * right * (1 - right) ** 2 * varies ** 0.6;
    return unit(varies > 0.01 ? steady + more : steady);
  });
};

const perez = JSON.parse(readFileSync(new URL("../data/dirint.json", import.meta.url), "utf8")) as {
  edges: { clearness: number[]; zenithDeg: number[]; change: number[] };
  factor: number[][][];
};
const classOf = (edges: readonly number[], value: number) => edges.filter((edge) => value >= edge).length;

/** Air mass of F. Kasten, Archiv für Meteorologie 14 (1965) 206–223, as both of the models below have it. */
const airMass = (heightDeg: number) => 1 / (sine(heightDeg) + 0.15 * (heightDeg + 3.885) ** -1.253);

/** Beam over extraterrestrial: E. L. Maxwell, SERI/TR-215-3087 (1987) */
function disc(kt: number, heightDeg: number): number {
  const k = unit(kt);
  const am = Math.min(12, airMass(heightDeg));
  const [a, b, c] =
    k <= 0.6
      ? [0.512 + k * (-1.56 + k * (2.286 - k * 2.222)), 0.37 + 0.962 * k, -0.28 + k * (0.932 - k * 2.048)]
      : [
          -5.743 + k * (21.77 + k * (-27.49 + k * 11.56)),
          41.4 + k * (-118.5 + k * (66.05 + k * 31.9)),
          -47.01 + k * (184.2 + k * (-222 + k * 73.81)),
        ];
  const clear = 0.866 + am * (-0.122 + am * (0.0121 + am * (-0.000653 + am * 1.4e-5)));
  return Math.max(0, clear - (a! + b! * Math.exp(c! * am)));
}

/** DIRINT with the change from hour to hour, water vapour unknown: R. Perez et al., ASHRAE Transactions 98 (1992) 354–369 */
export const dirint: SeparationModel = ({ elevationM, kt, heightDeg, before, after }) => {
  const even = kt.map((k, i) => {
    const am = airMass(heightDeg[i]!) * pressureShare(elevationM);
    return Math.min(0.82, unit(k) / (0.1 + 1.031 * Math.exp(-1.4 / (0.9 + 9.4 / am))));
  });
  return kt.map((k, i) => {
    if (k <= 0) return 1;
    const change = 0.5 * (Math.abs(even[i]! - even[before[i]!]!) + Math.abs(even[i]! - even[after[i]!]!));
    const { clearness, zenithDeg, change: steps } = perez.edges;
    const row = perez.factor[classOf(clearness, even[i]!)]![classOf(zenithDeg, 90 - heightDeg[i]!)]!;
    return unit(1 - (disc(k, heightDeg[i]!) * row[classOf(steps, change)]!) / k);
  });
};
