import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Worker, type WorkerOptions } from "node:worker_threads";

/**
 * Starts a program of ours in a thread of its own: beside this file or one folder up when bundled, else its source by way of the project's own
 * loader.
 * @param name of its file, without the ending
 */
export function startThread(name: string, options: WorkerOptions = {}): Worker {
  for (const place of [`./${name}.js`, `../${name}.js`]) {
    const path = new URL(place, import.meta.url);
    if (existsSync(fileURLToPath(path))) return new Worker(path, options);
  }
  const source = new URL(`./${name}.ts`, import.meta.url);
  const program = `import("tsx/esm/api").then(({ register }) => { register(); return import(${JSON.stringify(source.href)}); });`;
  return new Worker(program, { ...options, eval: true });
}
