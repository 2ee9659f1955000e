/**
 * hosting: what a host has to be told (headers, policy), as the ready files of a build.
 */
export { HOSTING_FILES } from "./hostingFiles.ts";
