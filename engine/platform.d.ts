/** What every platform of ours has beside ECMAScript, and what the build puts in the place of files that are no code. */
declare function structuredClone<Value>(value: Value): Value;

declare module "*?raw" {
  const text: string;
  export default text;
}

declare module "*?inline" {
  const address: string;
  export default address;
}
