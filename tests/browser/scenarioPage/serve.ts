import { fileURLToPath } from "node:url";
import { createServer, type ViteDevServer } from "vite";
import solid from "vite-plugin-solid";

/** Serves the test page from its sources, apart from the explorer's own build. */
export async function serveScenarioPage(): Promise<{ url: string; server: ViteDevServer }> {
  const server = await createServer({
    configFile: false,
    root: fileURLToPath(new URL(".", import.meta.url)),
    cacheDir: fileURLToPath(new URL("../../../node_modules/.vite-scenario-page", import.meta.url)),
    plugins: [solid()],
    logLevel: "error",
    server: {
      host: "127.0.0.1",
      port: 0,
      hmr: false,
      fs: { allow: [fileURLToPath(new URL("../../..", import.meta.url))] },
    },
    optimizeDeps: {
      include: [
        "zod",
        "@photostructure/tz-lookup",
        "fastest-levenshtein",
        "suncalc",
        "seedrandom",
        "d3-geo",
        "topojson-client",
      ],
    },
  });
  await server.listen();
  return { url: server.resolvedUrls!.local[0]!, server };
}
