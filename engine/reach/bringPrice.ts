import type { Bring } from "../scenario/bring.ts";
import type { Price } from "./lever.ts";

/**
 * What so many more of a thing take, from what is stated of one; below 0 for fewer.
 * @param bring of one of them; what it leaves out is not stated
 */
export function bringPrice(bring: Bring | undefined, times: number, setUpTimes = times): Price {
  // Of what is at hand for nothing, more is seldom to be had for nothing: a stated 0 says nothing of a further one.
  const of = (value: number | undefined, by: number) =>
    value === undefined || (value === 0 && by > 0) ? null : value * by + 0;
  return {
    cost: of(bring?.cost, times),
    massKg: of(bring?.massKg, times),
    minutes: setUpTimes === 0 ? 0 : of(bring?.setupMinutes, setUpTimes),
    onAirH: 0,
  };
}
