import type { Plugin } from "vite";
import { PAGE_HEADERS, PAGE_POLICY } from "./pagePolicy.ts";

/** Files with a fingerprint in their name never change; all others are asked for again, so that a new build is seen. */
const FOREVER = "public, max-age=31536000, immutable";
const ASK_AGAIN = "no-cache";
const HINT = "The page works without this file; docs/hosting.md says where it helps.";

const headers = Object.entries(PAGE_HEADERS);

/** For web spaces under Apache and servers that read its files. What the server lacks is passed over. */
const htaccess = `# ${HINT} Where the server answers 500 since it is here, delete it.
<IfModule mod_headers.c>
${headers.map(([name, value]) => `  Header set ${name} "${value}"`).join("\n")}
  Header set Cache-Control "${ASK_AGAIN}"
  <FilesMatch "-[A-Za-z0-9_-]{8}\\.(js|css|woff2|bin)$">
    Header set Cache-Control "${FOREVER}"
  </FilesMatch>
</IfModule>
<IfModule mod_mime.c>
  AddType text/javascript .js
  AddType application/manifest+json .webmanifest
  AddType font/woff2 .woff2
</IfModule>
`;

/** For static page hosts that read a list of headers at the root of the site. */
const headerList = `# ${HINT}
/*
${headers.map(([name, value]) => `  ${name}: ${value}`).join("\n")}
/assets/*
  Cache-Control: ${FOREVER}
/offlineWorker.js
  Cache-Control: ${ASK_AGAIN}
`;

/** For nginx. A location with headers of its own takes over none from outside it, so they stand in both. */
const nginxHeaders = headers.map(([name, value]) => `  add_header ${name} "${value}" always;`).join("\n");
const nginx = `# ${HINT} Put it into the server block, with the address and the folder of yours.
location /duskline/ {
  alias /srv/www/duskline/;
  index index.html;
  types {
    text/html html;
    text/javascript js;
    text/css css;
    font/woff2 woff2;
    application/octet-stream bin;
    image/png png;
    image/svg+xml svg;
    application/manifest+json webmanifest;
  }
${nginxHeaders}
  add_header Cache-Control "${ASK_AGAIN}" always;
}
location /duskline/assets/ {
  alias /srv/www/duskline/assets/;
  types {
    text/javascript js;
    text/css css;
    font/woff2 woff2;
    application/octet-stream bin;
  }
${nginxHeaders}
  add_header Cache-Control "${FOREVER}" always;
}
`;

/** Files for servers, not for browsers: many hosts hand them to nobody. */
export const HOSTING_FILES: Readonly<Record<string, string>> = {
  ".htaccess": htaccess,
  _headers: headerList,
  "nginx-duskline.conf": nginx,
};

/** Vite plugin: writes the page's policy into the page, and the same as headers into files beside it, ready for the common hosts. */
export function hostingFiles(): Plugin {
  return {
    name: "hosting-files",
    apply: "build",
    transformIndexHtml: () => [
      {
        tag: "meta",
        attrs: { "http-equiv": "Content-Security-Policy", content: PAGE_POLICY },
        injectTo: "head-prepend",
      },
    ],
    generateBundle() {
      for (const [fileName, source] of Object.entries(HOSTING_FILES)) {
        this.emitFile({ type: "asset", fileName, source });
      }
    },
  };
}
