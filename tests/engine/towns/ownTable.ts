import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { townTable } from "../../../engine/towns/index.ts";

/** The towns' file as it lies in the repository. */
export const PACKED_TOWNS = readFileSync("explorer/place/data/towns.bin");
export const TOWN_BYTES = new Uint8Array(gunzipSync(PACKED_TOWNS));
export const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
export const TOWNS = townTable(TOWN_BYTES, textOf);
