/** What a word in braces stands for: its words, the value behind them, and whether that is no more than what is usual. */
export interface Token {
  readonly words: string;
  readonly value?: unknown;
  readonly isUsual?: boolean;
}

/**
 * Fills in a sentence as `FieldMeta` writes it: "{count} {panel|panels}[, {share} of the time]".
 * @param templates of several, the first of which every word in braces stands for something
 * @param tokenFor what a word in braces stands for; null for nothing
 */
export function sentence(
  templates: string | readonly string[],
  tokenFor: (name: string) => Token | null,
): string | null {
  for (const template of [templates].flat()) {
    const said = filledIn(template, tokenFor);
    if (said !== null) return said;
  }
  return null;
}

function filledIn(template: string, tokenFor: (name: string) => Token | null): string | null {
  let last: unknown;
  let isMissing = false;
  const whole = template.replace(/\[([^\]]*)\]/g, (_, piece: string) => {
    const tokens = [...piece.matchAll(/\{([^}|]*)\}/g)].map(([, name]) => tokenFor(name!));
    return tokens.some((token) => token === null || token.isUsual === true) ? "" : piece;
  });
  const said = whole.replace(/\{([^}]*)\}/g, (_, name: string) => {
    const [one, many] = name.split("|");
    if (many !== undefined) return (last === 1 ? one : many)!;
    const token = tokenFor(name);
    if (token === null) isMissing = true;
    if (typeof token?.value === "number") last = token.value;
    return token?.words ?? "";
  });
  return isMissing ? null : said;
}

/** A name or label in the middle of a sentence; "HF position" stays as it is. */
export function inSentence(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
