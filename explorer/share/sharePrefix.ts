/** What the part of an address behind # begins with when it carries a notebook. */
export const SHARE_PREFIX = "#share=";
