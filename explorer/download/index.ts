/**
 * download: files that leave the page: a picture in two formats, a text under a safe name.
 */
export { PictureActs } from "./PictureActs.tsx";
export { fileName, saveFile } from "./saveFile.ts";
