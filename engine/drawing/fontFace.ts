import font from "@fontsource-variable/radio-canada/files/radio-canada-latin-standard-normal.woff2?inline";

/** The page's own face (Radio Canada, SIL Open Font License 1.1), inside the text: what leaves the page looks as it does on it. */
export const fontFace = `@font-face{font-family:"Radio Canada Variable";font-weight:300 700;font-stretch:75% 100%;src:url(${font}) format("woff2")}`;
