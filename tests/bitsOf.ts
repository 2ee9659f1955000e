/** Fingerprints by path: "prepared.bank.acceptA" and so on. */
export type Bits = Record<string, string>;

/**
 * Fingerprints of every number and array of numbers in a value, to the last bit: arrays whole, loose numbers by name. Text and
 * truth are passed over. Runs in Node and in a page alike.
 */
export function bitsOf(value: unknown, path = ""): Bits {
  const bits: Bits = {};
  const visit = (at: unknown, name: string): void => {
    if (typeof at === "number") bits[name] = fingerprint(new Uint8Array(Float64Array.of(at).buffer));
    else if (ArrayBuffer.isView(at)) bits[name] = fingerprint(new Uint8Array(at.buffer, at.byteOffset, at.byteLength));
    else if (at !== null && typeof at === "object") {
      for (const [key, inner] of Object.entries(at)) visit(inner, name === "" ? key : `${name}.${key}`);
    }
  };
  visit(value, path);
  return bits;
}

/** Two FNV-1a hashes of 32 bits (G. Fowler, L. Noll, K. Vo), forwards and backwards: 64 bits in all. */
function fingerprint(bytes: Uint8Array): string {
  let forwards = 0x811c9dc5;
  let backwards = 0x811c9dc5;
  for (let k = 0; k < bytes.length; k++) {
    forwards = Math.imul(forwards ^ bytes[k]!, 0x01000193);
    backwards = Math.imul(backwards ^ bytes[bytes.length - 1 - k]!, 0x01000193);
  }
  return [forwards, backwards].map((hash) => (hash >>> 0).toString(16).padStart(8, "0")).join("");
}

/** Names whose fingerprints differ, or that only one side has. */
export function differingBits(one: Bits, other: Bits): string[] {
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].filter((name) => one[name] !== other[name]);
}
