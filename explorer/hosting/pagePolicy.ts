/**
 * What the page may do, as its Content-Security-Policy (W3C CSP level 3): its own files, pictures that it draws itself, and nothing
 * from elsewhere, nothing written into it, nothing made from text. It stands in the page, so that no server has to be set up for it.
 */
export const PAGE_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/**
 * The same as headers, for servers that can be told. `frame-ancestors` counts in a header only (CSP level 3, section 3.3); without one the
 * page itself refuses to stand in another.
 */
export const PAGE_HEADERS = {
  "Content-Security-Policy": `${PAGE_POLICY}; frame-ancestors 'none'`,
  "Referrer-Policy": "no-referrer",
  "X-Content-Type-Options": "nosniff",
} as const;
