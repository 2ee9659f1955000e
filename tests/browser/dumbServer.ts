import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";

export interface DumbServer {
  /** Where the folder is served, ending in a slash. */
  readonly url: string;
  /** Addresses that were asked for, without the host. */
  readonly asked: readonly string[];
  stop(): Promise<void>;
}

/** The kinds without which no browser runs a page; all else goes out as mere bytes. */
const KINDS: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
};

/**
 * A file server that knows nothing: no headers of ours, no kinds but those that a browser insists on, files that begin with a dot kept back as many
 * hosts do.
 * @param path where the folder is served, as "/club/tools/"
 */
export async function dumbServer(folder: string, path: string): Promise<DumbServer> {
  const asked: string[] = [];
  const server = createServer((request, response) => {
    asked.push(request.url!);
    const name = decodeURIComponent(request.url!.replace(/[?#].*$/s, ""));
    const inside = name.startsWith(path) ? name.slice(path.length) : null;
    const file = inside === null ? null : join(folder, inside === "" ? "index.html" : inside);
    const isServed = file !== null && !/(^|\/)\./.test(inside!) && existsSync(file) && statSync(file).isFile();
    response.writeHead(isServed ? 200 : 404, {
      "Content-Type": (isServed && KINDS[extname(file)]) || "application/octet-stream",
    });
    if (isServed) createReadStream(file).pipe(response);
    else response.end();
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}${path}`,
    asked,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
