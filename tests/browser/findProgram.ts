import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync, readFileSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";

/** The first of these programs that stands on PATH. */
export function onPath(names: readonly string[]): string | undefined {
  const suffixes = process.platform === "win32" ? [".exe"] : [""];
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  const candidates = names.flatMap((name) => folders.flatMap((folder) => suffixes.map((s) => join(folder, name + s))));
  return candidates.find(isExecutable);
}

/**
 * Installs packages of the distribution, as root on Debian or Ubuntu; elsewhere it does nothing.
 * @returns whether they are there now
 */
export function installPackages(what: string, packages: readonly string[]): boolean {
  if (!isRoot() || !isDebianLike()) return false;
  console.log(`No ${what} found: installing the distribution's package (apt-get install ${packages.join(" ")}) …`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  // Files of tests run side by side, and apt-get suffers nobody beside itself.
  const lock = join(tmpdir(), "duskline-apt-get.lock");
  return [["update"], ["install", "-y", "--no-install-recommends", ...packages]].every(
    (args) =>
      spawnSync("flock", [lock, "apt-get", ...args], { env, stdio: ["ignore", "ignore", "inherit"] }).status === 0,
  );
}

/** Whether this process is root, where Chromium's sandbox cannot start. */
export function isRoot(): boolean {
  return process.getuid?.() === 0;
}

export function isDebianLike(): boolean {
  if (process.platform !== "linux" || !existsSync("/etc/os-release")) return false;
  return /^ID(_LIKE)?=.*\b(debian|ubuntu)\b/m.test(readFileSync("/etc/os-release", "utf8"));
}

export function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
