/** What one thing wants at each step, split by whether it is drawn anyway or because somebody uses it. */
export interface DeviceLoad {
  readonly id: string;
  readonly name: string;
  /** Drawn whether or not anybody is there, W per step. */
  readonly alwaysW: Float64Array;
  /** Drawn on top because it is used, W per step. */
  readonly usedW: Float64Array;
}
