import { realpath } from "node:fs/promises";
import { join, resolve, sep } from "node:path";
import type { Plugin } from "vite";

/**
 * Keeps the local server inside the folder that it serves: a link in it that leads elsewhere is not followed, whoever put it there.
 * @param folder what is served
 */
export function stayInside(folder: string): Plugin {
  return {
    name: "duskline-stay-inside",
    configurePreviewServer(server) {
      server.middlewares.use((request, response, next) => {
        void isInside(folder, request.url ?? "/").then((inside) => {
          if (inside) return next();
          response.statusCode = 404;
          response.end("There is no such file here.");
        });
      });
    },
  };
}

/** Whether what an address names lies in the folder; what is not there at all is left to the server, which says so. */
export async function isInside(folder: string, url: string): Promise<boolean> {
  let path: string;
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/s, ""));
  } catch {
    return false;
  }
  if (path.includes("\0")) return false;
  try {
    const root = await realpath(folder);
    const real = await realpath(resolve(join(root, path)));
    return real === root || real.startsWith(`${root}${sep}`);
  } catch {
    return true;
  }
}
