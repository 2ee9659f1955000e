import { MOST_BYTES } from "../../engine/answers/notebookLimits.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import { SHARE_PREFIX } from "./sharePrefix.ts";

/** Version of what follows: deflated JSON of a notebook, as base64 with the letters that addresses allow. */
const VERSION = "1.";
/** Longer addresses are cut by programs on the way; some mail programs and chats already begin here. */
export const LONGEST_FRAGMENT = 30_000;

export type ShareLink =
  | { readonly ok: true; readonly fragment: string }
  | { readonly ok: false; readonly sentence: string };

/** Packs a notebook into the part of an address behind #, which no server ever gets to see. */
export async function shareFragment(notebook: Notebook): Promise<ShareLink> {
  const packed = await bytesOf(through(JSON.stringify(notebook), new CompressionStream("deflate-raw")), MOST_BYTES);
  const fragment = packed === null ? null : `${SHARE_PREFIX}${VERSION}${toBase64Url(packed)}`;
  if (fragment !== null && fragment.length <= LONGEST_FRAGMENT) return { ok: true, fragment };
  const size = fragment === null ? "far more" : `${Math.ceil(fragment.length / 1000)} kB`;
  return {
    ok: false,
    sentence: `This notebook is too large for a link: it would take ${size}, and links of up to ${LONGEST_FRAGMENT / 1000} kB arrive whole. Save it as a file and send that.`,
  };
}

/** What a link carries, unpacked and not read yet, or why it is not unpacked. */
export type Unpacked =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly sentences: readonly string[] };

/** Unpacks what a link carries. Nothing in it is trusted: neither its length nor what it swells to. */
export async function textOfFragment(fragment: string): Promise<Unpacked> {
  if (!fragment.startsWith(SHARE_PREFIX)) return refused("The address carries no notebook.");
  if (fragment.length > LONGEST_FRAGMENT) {
    return refused(
      `The link has ${Math.ceil(fragment.length / 1000)} kB; one that carries a notebook has at most ${LONGEST_FRAGMENT / 1000} kB. It was not unpacked.`,
    );
  }
  const rest = fragment.slice(SHARE_PREFIX.length);
  if (!rest.startsWith(VERSION)) {
    return refused(
      /^\d+\./.test(rest)
        ? "The link was made by a newer duskline; open it with that one, or ask for the file."
        : "The link is damaged: it does not say how it is packed.",
    );
  }
  const packed = fromBase64Url(rest.slice(VERSION.length));
  if (packed === null) return refused("The link is damaged: it holds letters that no such link has.");
  let bytes: Uint8Array | null;
  try {
    bytes = await bytesOf(through(packed, new DecompressionStream("deflate-raw")), MOST_BYTES);
  } catch {
    return refused("The link is damaged or was cut on its way; ask for it once more, or for the file.");
  }
  if (bytes === null)
    return refused(
      `What the link carries swells to more than ${MOST_BYTES / 1e6} MB; no notebook does. It was not opened.`,
    );
  try {
    return { ok: true, text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return refused("What the link carries is no text.");
  }
}

const refused = (sentence: string): Unpacked => ({ ok: false, sentences: [sentence] });

function through(
  source: string | Uint8Array<ArrayBuffer>,
  transform: CompressionStream | DecompressionStream,
): ReadableStream<Uint8Array> {
  return new Blob([source]).stream().pipeThrough(transform);
}

/** Reads a stream to its end, or gives up, and stops it, past `most` bytes. */
async function bytesOf(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array | null> {
  const reader = stream.getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel().catch(() => {});
      return null;
    }
    chunks.push(value);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

function toBase64Url(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[A-Za-z0-9_-]+$/.test(text) || text.length % 4 === 1) return null;
  const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}
