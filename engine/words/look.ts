/** The four looks that scenarios have, each a colour, a dash and a mark, in the order in which they are given out. */
export const LOOKS = ["first", "second", "third", "fourth"] as const;

/** How a scenario is drawn and underlined everywhere; `plain`, in ink and without a mark, where all four are given out. */
export type Look = (typeof LOOKS)[number] | "plain";

/** Each look in words: by these it is chosen. */
export const LOOK_WORDS: Readonly<Record<Look, string>> = {
  first: "solid, filled dot",
  second: "dashed, ring",
  third: "dotted, filled square",
  fourth: "dash and dot, open triangle",
  plain: "thin, no mark",
};
