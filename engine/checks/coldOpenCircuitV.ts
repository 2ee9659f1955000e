/**
 * Factor on open-circuit volts by the lowest air temperature it holds down to, warmest first (NEC table 690.7(A), crystalline
 * silicon). The code's own print could not be found in public: the figures were met again, all of them, only in the source of a public
 * program that draws permit plans. They lie above the sheets' 0.25 to 0.36 % a kelvin nearly everywhere, on the safe side.
 */
const TABLE: readonly (readonly [downToC: number, factor: number])[] = [
  [25, 1],
  [20, 1.02],
  [15, 1.04],
  [10, 1.06],
  [5, 1.08],
  [0, 1.1],
  [-5, 1.12],
  [-10, 1.14],
  [-15, 1.16],
  [-20, 1.18],
  [-25, 1.2],
  [-30, 1.21],
  [-35, 1.23],
  [-40, 1.25],
];

/** The code's factor on open-circuit volts for a lowest air temperature, °C; at −40 °C and below 1.25. */
export function coldFactor(airC: number): number {
  return TABLE.find(([downToC]) => airC >= downToC)?.[1] ?? 1.25;
}

/**
 * Open-circuit volts of a string at dawn, when cells are as cold as the air: by the sheet's coefficient from 25 °C, or by the
 * code's table, whichever is more. The table leaves room for a night colder than the one that was planned.
 * @param vocV of one module at 25 °C; @param vocTempCoeffPerK share a kelvin, 0 or less
 */
export function coldOpenCircuitV(vocV: number, inSeries: number, vocTempCoeffPerK: number, airC: number): number {
  const bySheet = 1 + vocTempCoeffPerK * (airC - RATED_C);
  return inSeries * vocV * (airC < RATED_C ? Math.max(bySheet, coldFactor(airC)) : bySheet);
}

/** Temperature at which data sheets are written, °C. */
const RATED_C = 25;
