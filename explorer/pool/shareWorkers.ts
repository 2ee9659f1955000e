import { dirname, resolve } from "node:path";
import type { Plugin } from "vite";

const STARTED = /new URL\("([^"]+)", import\.meta\.url\)(?=,\s*\{\s*type: "module")/g;
const PRELOAD_HELPER = "\0vite/preload-helper.js";
/** What the helper says that is true of pages only, and what is true in workers too. */
const ON_PAGES_ONLY = [
  ["deps && deps.length > 0", 'deps && deps.length > 0 && typeof document === "object"'],
  ["window.dispatchEvent", "globalThis.dispatchEvent"],
] as const;

/**
 * Vite plugin: makes workers entries of the page's own build, so that what page and workers have in common is one file, fetched
 * once. Left alone, each worker would be a build of its own with everything in it again.
 */
export function shareWorkers(): Plugin {
  return {
    name: "share-workers",
    apply: "build",
    enforce: "pre",
    transform(code, id) {
      if (id === PRELOAD_HELPER) return preloadAnywhere(code);
      if (!code.includes("new Worker(")) return null;
      return code.replace(STARTED, (_, path: string) => {
        const file = this.emitFile({ type: "chunk", id: resolve(dirname(id), path) });
        return `import.meta.ROLLUP_FILE_URL_${file}`;
      });
    },
  };
}

/** Vite's helper hurries along what a file that is fetched later asks for; in a worker there is no page to tell of it. */
function preloadAnywhere(code: string): string {
  let told = code;
  for (const [onPages, anywhere] of ON_PAGES_ONLY) {
    if (!told.includes(onPages))
      throw new Error(`Vite's preload helper no longer says "${onPages}"; look at shareWorkers.`);
    told = told.replaceAll(onPages, anywhere);
  }
  return told;
}
