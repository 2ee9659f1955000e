declare module "seedrandom/lib/alea.js" {
  /** One of the package's generators by itself; through the front door all seven of them come along. */
  export default function alea(seed: string): { int32(): number };
}
