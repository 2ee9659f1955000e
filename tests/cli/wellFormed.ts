const TOKEN = /<\/([\w:-]+)\s*>|<([\w:-]+)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>|<[^>]*>?|[^<]+/g;
const ENTITY = /&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[0-9a-fA-F]+);)/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML forbids
export const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/u;

/**
 * What is wrong with a text as XML: tags that do not close, attributes without quotes, bare signs. Enough for pictures
 * without comments, CDATA or processing instructions.
 * @returns null when nothing is
 */
export function notWellFormed(xml: string): string | null {
  const open: string[] = [];
  if (FORBIDDEN.test(xml)) return "a character that XML forbids";
  for (const [token, closes, opens, attributes, isEmpty] of xml.trim().matchAll(TOKEN)) {
    if (ENTITY.test(token)) return `a bare & in ${token.slice(0, 60)}`;
    if (closes !== undefined) {
      if (open.pop() !== closes) return `</${closes}> closes nothing`;
    } else if (opens !== undefined) {
      const names = [...(attributes ?? "").matchAll(/\s([\w:-]+)="[^"]*"/g)].map(([, name]) => name);
      if (new Set(names).size < names.length) return `an attribute twice in ${token.slice(0, 60)}`;
      if (isEmpty !== "/") open.push(opens);
    } else if (token.startsWith("<")) return `no tag: ${token.slice(0, 60)}`;
    else if (open.length === 0) return `text outside: ${token.slice(0, 60)}`;
  }
  return open.length === 0 ? null : `<${open.at(-1)}> is never closed`;
}
