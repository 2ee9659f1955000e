/** A chart's title and values at the left of the ruler. */
export interface AxisTitle {
  readonly title: string;
  readonly how: string;
  readonly titleY: number;
  /** The base of a chart is ruled darker. */
  readonly values: readonly { readonly y: number; readonly text: string; readonly isBase?: boolean }[];
}
