/** What the part of an address behind # begins with when it carries a notebook. */
export const SHARE_PREFIX = "#share=";
/** What it begins with when it carries one part of several: a notebook that takes more than one QR code. */
export const PART_PREFIX = "#part=";

export const carriesNotebook = (hash: string) => hash.startsWith(SHARE_PREFIX) || hash.startsWith(PART_PREFIX);
