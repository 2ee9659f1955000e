const ROW_PX = 22;

/** A label beyond the ruler, on a leader from the thing that it names. */
export interface EndLabel {
  /** Where the leader starts, on the line or in the area. */
  readonly x: number;
  readonly y: number;
  /** Height of the label itself, after labels have made room for one another. */
  readonly labelY: number;
  readonly figure: string;
  readonly words: string;
  readonly look: string;
  /** Whether the leader starts inside the drawing and wants a dot. */
  readonly dotted: boolean;
}

/** A label before it has found its row. */
export type UnplacedLabel = Omit<EndLabel, "labelY">;

/** Moves labels apart until each has a row, keeping their order and staying between `low` and `high` where they fit. */
export function spread(labels: readonly UnplacedLabel[], low: number, high: number): EndLabel[] {
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  const rows = sorted.map((label) => Math.min(high, Math.max(low, label.y)));
  for (let i = 1; i < rows.length; i++) rows[i] = Math.max(rows[i]!, rows[i - 1]! + ROW_PX);
  let limit = Math.max(high, low + (rows.length - 1) * ROW_PX);
  for (let i = rows.length - 1; i >= 0; i--) {
    rows[i] = Math.min(rows[i]!, limit);
    limit = rows[i]! - ROW_PX;
  }
  return sorted.map((label, i) => ({ ...label, labelY: rows[i]! }));
}
