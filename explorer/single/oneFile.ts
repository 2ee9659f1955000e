import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin, Rollup } from "vite";
import { SELDOM_LETTERS } from "../offline/precacheFiles.ts";

/** How large the file may be: what still goes by mail and opens at once from a slow stick. */
export const MOST_BYTES = 3_000_000;

const WORKER = /new Worker\(\s*new URL\("[^"]*?([A-Za-z]+)\.ts", import\.meta\.url\),\s*\{ type: "module" \}\s*\)/g;
const PRELOAD_HELPER = "\0vite/preload-helper.js";
/** What would not fit: whoever imports it is given nothing, and says so on the screen. */
const LEFT_OUT = /[\\/]explorer[\\/]place[\\/]data[\\/][a-z]+\.(bin\?url|json)$/;
const FACE = /(?:\/\*[^*]*\*\/\s*)?@font-face\s*\{[^}]*\}/g;

/**
 * Vite plugin: writes the page with its style sheet, type face, pictures, climate and workers as one HTML file that opens from a disk, where
 * browsers fetch nothing that lies beside it.
 * @param fileName what the file is called
 */
export function oneFile(fileName: string): Plugin {
  let root = "";
  return {
    name: "one-file",
    apply: "build",
    enforce: "pre",
    configResolved(config) {
      root = config.root;
    },
    load(id) {
      if (!LEFT_OUT.test(id)) return null;
      return id.endsWith(".json") ? '""' : 'export default "";';
    },
    transform(code, id) {
      // Vite's helper hurries along files that are fetched later: here there are none.
      if (id === PRELOAD_HELPER) {
        if (!code.includes("const __vitePreload ="))
          this.error("Vite's preload helper goes by another name; look at oneFile.");
        return "export const __vitePreload = (load) => load();";
      }
      if (/radio-canada\/standard\.css/.test(id)) {
        return code.replace(FACE, (face) => (SELDOM_LETTERS.test(face) ? "" : face));
      }
      if (!code.includes("new Worker(new URL(")) return null;
      const started = code.replace(WORKER, 'self.startInside("$1")');
      if (started.includes("new Worker(")) this.error(`${id} starts a worker in a way that oneFile does not know.`);
      return started;
    },
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const files = Object.values(bundle);
        const scripts = files.filter((file) => file.type === "chunk");
        const styles = files.filter((file) => file.fileName.endsWith(".css")) as Rollup.OutputAsset[];
        const others = files.filter((file) => file.type === "asset" && !styles.includes(file));
        if (scripts.length !== 1 || others.length > 0) {
          this.error(`The page that is one file has more: ${files.map((file) => file.fileName).join(", ")}.`);
        }
        const html = pageOf(
          readFileSync(join(root, "index.html"), "utf8"),
          readFileSync(join(root, "offline/public/icon.svg"), "utf8"),
          scripts[0]!.code,
          styles.map(({ source }) => String(source)).join("\n"),
        );
        const bytes = Buffer.byteLength(html);
        if (bytes > MOST_BYTES) this.error(`${fileName} has ${bytes} bytes and may have ${MOST_BYTES}.`);
        for (const name of Object.keys(bundle)) delete bundle[name];
        this.emitFile({ type: "asset", fileName, source: html });
      },
    },
  };
}

/** The page's HTML with everything inside, and a policy that knows script and style sheet by what they are. */
export function pageOf(html: string, icon: string, script: string, style: string): string {
  const told = insideScript(knowingItself(script));
  const policy = [
    "default-src 'none'",
    `script-src ${hashOf(told)}`,
    `style-src ${hashOf(style)}`,
    "img-src data: blob:",
    "font-src data:",
    "worker-src blob:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  const without = html
    .replace(/ *<!--[\s\S]*?-->\s*<p class="from-folder">[\s\S]*?<\/p>\n/, "")
    .replace(/ *<link rel="(?:icon|apple-touch-icon|manifest)"[^>]*>\n/g, "")
    .replace(/ *<script type="module"[^>]*><\/script>\n/, "");
  const head = [
    `<meta http-equiv="Content-Security-Policy" content="${policy}" />`,
    `<link rel="icon" href="data:image/svg+xml;base64,${Buffer.from(icon).toString("base64")}" />`,
    `<style>${style}</style>`,
  ];
  // As functions, for what is put in has dollar signs.
  return without
    .replace(/(<meta charset="utf-8" \/>\n)/, (charset) => `${charset}    ${head.join("\n    ")}\n`)
    .replace("</body>", () => `  <script>${told}</script>\n  </body>`);
}

/** A script that can say what it is, so that it can be a worker as well: a function knows its own text. */
function knowingItself(script: string): string {
  return `(function duskline(){self.dusklineScript=()=>\`(\${duskline})()\`;${script}\n})()`;
}

/** A script as it may stand in HTML: nothing in it ends the element, and the browser reads it letter by letter as it was hashed. */
function insideScript(script: string): string {
  if (/[\0\r]/.test(script)) throw new Error("The script holds a letter that HTML would change.");
  return script.replace(/<(?=!--|\/script)/gi, "\\x3c");
}

function hashOf(text: string): string {
  return `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
}
