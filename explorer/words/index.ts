/**
 * words: numbers as a person types them.
 */
export { typedNumber } from "./typedNumber.ts";
