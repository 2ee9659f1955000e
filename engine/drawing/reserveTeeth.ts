const TOOTH_PX = 9;

/** Short strokes along a reserve's line, on its bad side; the line lies at height 0. */
export function reserveTeeth(fromX: number, toX: number): string {
  const count = Math.max(0, Math.floor((toX - fromX) / TOOTH_PX));
  return Array.from({ length: count }, (_, i) => `M${(fromX + (i + 0.5) * TOOTH_PX).toFixed(1)} 0v5`).join("");
}
