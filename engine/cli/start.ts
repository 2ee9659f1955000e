/** `npm start`: builds everything, prints the example's verdict, and serves the explorer to this machine only. */
import { spawnSync } from "node:child_process";
import { build, preview } from "vite";

const EXAMPLE = "scenarios/walnut-grove.json";

await build({ logLevel: "warn" });
await build({ configFile: "vite.node.config.ts", logLevel: "warn" });

// A verdict that the command line cannot give is said there, in its own words, and is no reason to withhold the page.
spawnSync(process.execPath, ["dist/duskline.js", "trace", EXAMPLE], { stdio: "inherit" });

const server = await preview({ logLevel: "warn" });
console.log(`\nThe explorer is at ${server.resolvedUrls?.local[0]}  (Ctrl-C stops it)`);

for (const signal of ["SIGINT", "SIGTERM"] as const) {
  process.on(signal, () => {
    void server.close().then(() => process.exit(0));
  });
}
