import { build, type Rolldown } from "vite";

/**
 * `bitsReport` with everything it needs as one classic script, which defines the global `bits`.
 * @param target the page's own by default; "es2015" writes powers as calls of Math.pow, so that a test can reach them
 */
export async function bitsBundle(target = "es2022"): Promise<string> {
  const built = await build({
    configFile: false,
    publicDir: false,
    logLevel: "error", // a package writes big integers, which es2015 has no word for and Node runs anyway,
    build: {
      write: false,
      minify: false,
      target,
      lib: { entry: "tests/bitsReport.ts", formats: ["iife"], name: "bits" },
    },
  });
  const [{ output }] = built as Rolldown.RolldownOutput[] as [Rolldown.RolldownOutput];
  return output[0].code;
}
