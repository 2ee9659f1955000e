/**
 * Characters that a terminal obeys (ECMA-48: C0 but for the end of a line and the tab, DEL, C1) and that turn the order of others round
 * (Unicode UAX 9: embeddings, overrides, isolates).
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const OBEYED = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g;

/** A text that may hold names from strangers, for a terminal: what that would obey is spelled out, in a way that JSON reads as the same text. */
export function harmless(text: string): string {
  return text.replace(OBEYED, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`);
}
