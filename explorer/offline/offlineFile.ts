/** The service worker's file; it must lie beside the page, for it serves only what lies below it. */
export const OFFLINE_WORKER = "offlineWorker.js";
