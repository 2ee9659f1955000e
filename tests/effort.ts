const LETTERS = "duskline ".repeat(230_000);

/** Goes once over two million letters, the least that anything can do that reads as many. */
function onceOver(): number {
  let sum = 0;
  for (let i = 0; i < LETTERS.length; i++) sum += LETTERS.charCodeAt(i);
  return sum;
}

function workMs(work: () => unknown): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

let yardstickMs: number | null = null;

/**
 * How much work something is, as a multiple of going once over two million letters in the same run on the same machine. What
 * grows with the square of its size is hundreds of times beyond what grows with its size, so a test leaves plenty of room.
 * @param enough a multiple under which the first turn is believed; over it, the least of three counts
 */
export function effort(work: () => unknown, enough: number): number {
  yardstickMs ??= Math.max(0.5, Math.min(workMs(onceOver), workMs(onceOver), workMs(onceOver)));
  let least = workMs(work) / yardstickMs;
  for (let turn = 1; turn < 3 && least >= enough && least < 20 * enough; turn++)
    least = Math.min(least, workMs(work) / yardstickMs);
  return least;
}
