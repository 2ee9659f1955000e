/**
 * offline: the page without a network: what is put by, a newer version, installing.
 */
export { InstallAct } from "./InstallAct.tsx";
export { watchInstalling } from "./installing.ts";
export { makeOffline } from "./makeOffline.ts";
export { NewerVersion } from "./NewerVersion.tsx";
export { OFFLINE_WORKER } from "./offlineFile.ts";
export { SELDOM_LETTERS } from "./precacheFiles.ts";
export { isInside } from "./stayInside.ts";
