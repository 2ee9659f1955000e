/** From the least to the most that things of one kind are seen to take, and what to plan with; in the unit of the thing. */
export interface GearRange {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
}

/** A kind of gear, of no make. */
export interface GenericGear {
  /** Stays the same: what somebody measured is kept by it. */
  readonly id: string;
  readonly name: string;
  /** Other words that people look for it by. */
  readonly words: string;
  /** What its ranges are in; amperes are at 13.8 V. */
  readonly unit: "W" | "A";
  /** On receive or idle; null where it takes next to nothing. */
  readonly idle: GearRange | null;
  /** At full output or at work. */
  readonly working: GearRange;
  /** A transceiver's rated watts and its usual mode; null for what does not send. */
  readonly radio: { readonly ratedW: number; readonly mode: "ssb" | "cw" | "fm" } | null;
  /** When such a thing usually works (evenings: 18 to 23; nights: 22:30 to 6:30), and for which part of that. */
  readonly use: "always" | "afterDark" | "whenStaffed" | "evenings" | "nights";
  readonly share: number;
  /** Where the range comes from. */
  readonly source: string;
}

/** Volts at which amperes are stated. */
export const GEAR_AT_V = 13.8;

const CP = "common practice, no source";
const MEMORY = "from memory";
const AUDIT = "measured in one motorhome's energy audit";
const range = (low: number, usual: number, high: number): GearRange => ({ low, usual, high });

type Row = Pick<GenericGear, "id" | "name" | "words" | "unit" | "idle" | "working" | "source"> & Partial<GenericGear>;
const rows = (list: readonly Row[]): GenericGear[] =>
  list.map((row) => ({ radio: null, use: "whenStaffed", share: 1, ...row }));

/**
 * What portable stations bring, by kind: ranges across makes, collected for planning. What to plan with lies inside; your own meter goes
 * before any of it.
 */
export const GENERIC_GEAR: readonly GenericGear[] = rows([
  {
    id: "hf-100",
    name: "HF transceiver, 100 W",
    words: "radio rig shortwave ssb",
    unit: "A",
    idle: range(0.9, 1.2, 2),
    working: range(18, 20, 23),
    radio: { ratedW: 100, mode: "ssb" },
    source: "club pages on battery operation: 22 A and 1 to 2 A; range common practice",
  },
  {
    id: "hf-10",
    name: "HF transceiver, 10 W",
    words: "radio rig qrp small portable ssb",
    unit: "A",
    idle: range(0.15, 0.3, 0.5),
    working: range(1.5, 2.5, 3.5),
    radio: { ratedW: 10, mode: "ssb" },
    source: `club page on battery life; idle range ${MEMORY}`,
  },
  {
    id: "cw-5",
    name: "Code transceiver, 5 W",
    words: "radio rig qrp cw morse kit",
    unit: "A",
    idle: range(0.03, 0.1, 0.15),
    working: range(0.8, 0.9, 1),
    radio: { ratedW: 5, mode: "cw" },
    source: `club page on battery life; idle ${MEMORY}`,
  },
  {
    id: "sdr-100",
    name: "Network-head transceiver, 100 W",
    words: "radio rig sdr software defined",
    unit: "A",
    idle: range(1.5, 2.2, 3),
    working: range(18, 20, 23),
    radio: { ratedW: 100, mode: "ssb" },
    source: MEMORY,
  },
  {
    id: "fm-25",
    name: "VHF/UHF FM mobile, 25 W",
    words: "radio rig talk-in repeater packet",
    unit: "A",
    idle: range(0.3, 0.5, 0.7),
    working: range(5, 5.8, 6.5),
    radio: { ratedW: 25, mode: "fm" },
    source: `a mesh network's field report; range ${CP}`,
  },
  {
    id: "fm-50",
    name: "VHF/UHF FM mobile, 50 W",
    words: "radio rig talk-in repeater packet",
    unit: "A",
    idle: range(0.3, 0.5, 0.7),
    working: range(8, 10.5, 12),
    radio: { ratedW: 50, mode: "fm" },
    source: `a mesh network's field report; range ${CP}`,
  },
  {
    id: "handheld",
    name: "Handheld on its charger",
    words: "ht walkie radio charging",
    unit: "A",
    idle: range(0.02, 0.03, 0.05),
    working: range(0.4, 0.7, 1),
    use: "evenings",
    share: 0.4,
    source: CP,
  },
  {
    id: "hotspot",
    name: "Digital voice hotspot",
    words: "dmr gateway",
    unit: "W",
    idle: range(2, 3, 4),
    working: range(3, 4, 5),
    use: "always",
    source: MEMORY,
  },
  {
    id: "sdr-stick",
    name: "Receive-only SDR stick",
    words: "receiver usb dongle",
    unit: "W",
    idle: null,
    working: range(1, 1.2, 1.5),
    source: MEMORY,
  },
  {
    id: "board-computer",
    name: "Single-board computer",
    words: "logging digital node",
    unit: "W",
    idle: range(2.5, 4, 5),
    working: range(6.4, 8, 10.5),
    source: "published measurements of single-board computers, 2026",
  },
  {
    id: "mini-pc",
    name: "Mini PC",
    words: "computer logging",
    unit: "W",
    idle: range(6, 10, 15),
    working: range(20, 30, 40),
    source: CP,
  },
  {
    id: "laptop",
    name: "Laptop, battery full",
    words: "computer notebook logging",
    unit: "W",
    idle: null,
    working: range(10, 15, 30),
    source: CP,
  },
  {
    id: "laptop-charging",
    name: "Laptop, charging",
    words: "computer notebook",
    unit: "W",
    idle: null,
    working: range(45, 65, 100),
    use: "evenings",
    share: 0.4,
    source: "65 W from a field-weekend report, 2020; range common practice",
  },
  {
    id: "phone",
    name: "Phone or tablet, charging",
    words: "mobile usb",
    unit: "W",
    idle: null,
    working: range(5, 10, 18),
    use: "evenings",
    share: 0.4,
    source: CP,
  },
  {
    id: "monitor",
    name: "Monitor, 22 to 24 in",
    words: "screen display",
    unit: "W",
    idle: range(0.3, 0.5, 1),
    working: range(12, 18, 25),
    source: CP,
  },
  {
    id: "router",
    name: "Small router or access point",
    words: "wifi network internet",
    unit: "W",
    idle: range(3, 4.5, 6),
    working: range(5, 8, 12),
    use: "always",
    source: CP,
  },
  {
    id: "cellular-router",
    name: "Cellular router",
    words: "wifi network internet lte modem",
    unit: "W",
    idle: range(2, 4, 6),
    working: range(6, 9, 15),
    use: "always",
    source: `idle from an article on parasitic loads; working ${MEMORY}`,
  },
  {
    id: "usb-modem",
    name: "USB cellular modem",
    words: "network internet lte stick",
    unit: "W",
    idle: range(1.5, 2, 3),
    working: range(3, 4, 5),
    use: "always",
    source: `published measurements of single-board computers, 2026; working ${MEMORY}`,
  },
  {
    id: "mesh",
    name: "Mesh or long-haul Wi-Fi radio",
    words: "network link",
    unit: "W",
    idle: null,
    working: range(20, 24, 28),
    use: "always",
    source: "24 W in a mesh network's field report; range our own guess",
  },
  {
    id: "switch",
    name: "Network switch, 5 to 8 ports",
    words: "ethernet",
    unit: "W",
    idle: range(1.5, 2, 3),
    working: range(2, 4, 6),
    use: "always",
    source: CP,
  },
  {
    id: "satellite",
    name: "Satellite internet terminal",
    words: "network dish",
    unit: "W",
    idle: range(15, 30, 40),
    working: range(40, 65, 110),
    source: `${MEMORY}; more when it melts snow`,
  },
  {
    id: "lamp",
    name: "LED lamp",
    words: "light",
    unit: "A",
    idle: null,
    working: range(0.2, 0.35, 0.5),
    use: "evenings",
    source: CP,
  },
  {
    id: "peg-light",
    name: "Light on a guy or a peg",
    words: "marker lamp led",
    unit: "W",
    idle: null,
    working: range(0.2, 0.5, 1),
    use: "afterDark",
    source: CP,
  },
  {
    id: "strip",
    name: "LED strip, 5 m",
    words: "light",
    unit: "A",
    idle: null,
    working: range(1, 1.5, 2),
    use: "evenings",
    source: CP,
  },
  {
    id: "fan",
    name: "Fan, desk",
    words: "air cooling",
    unit: "A",
    idle: null,
    working: range(0.1, 0.3, 0.5),
    source: CP,
  },
  {
    id: "roof-vent",
    name: "Roof vent",
    words: "fan air cooling",
    unit: "A",
    idle: null,
    working: range(0.3, 1.2, 3),
    source: CP,
  },
  {
    id: "fridge",
    name: "Compressor fridge, 30 to 45 L",
    words: "cooler refrigerator food",
    unit: "A",
    idle: null,
    working: range(3, 4, 5),
    use: "always",
    share: 0.35,
    source: `${CP}: running a quarter to a half of the time`,
  },
  {
    id: "freezer",
    name: "Compressor freezer, 30 to 45 L",
    words: "cooler ice food",
    unit: "A",
    idle: null,
    working: range(3, 4.5, 6),
    use: "always",
    share: 0.55,
    source: `${CP}: running half to two thirds of the time`,
  },
  {
    id: "heater-pad",
    name: "Heater pad with thermostat",
    words: "heating mat warm battery box blanket",
    unit: "W",
    idle: null,
    working: range(10, 30, 60),
    use: "nights",
    share: 0.5,
    source: `${CP}: on half of a cold night`,
  },
  {
    id: "amplifier",
    name: "Linear amplifier, 200 W out at 12 V",
    words: "amp pa final power booster linear",
    unit: "A",
    idle: range(0.3, 0.7, 2),
    working: range(27, 32, 40),
    share: 0.06,
    source: `${CP}: 40 to 55 % efficient; sends 15 % of the time, in SSB at two fifths of its peak`,
  },
  {
    id: "tuner",
    name: "Automatic antenna tuner",
    words: "atu coupler matching",
    unit: "A",
    idle: range(0.02, 0.1, 0.3),
    working: range(0.4, 0.7, 1),
    share: 0.01,
    source: `${CP}: works for seconds`,
  },
  {
    id: "rotator",
    name: "Antenna rotator",
    words: "rotor beam",
    unit: "A",
    idle: range(0.03, 0.05, 0.07),
    working: range(1, 2.5, 4),
    share: 0.02,
    source: `${CP}: turns 1 to 3 % of the time`,
  },
  {
    id: "inverter",
    name: "Inverter, nothing on it",
    words: "mains ac 230 120",
    unit: "A",
    idle: null,
    working: range(0.3, 0.8, 2.2),
    use: "always",
    source: `2.2 A ${AUDIT}; range ${CP}`,
  },
  {
    id: "standing",
    name: "Trailer's standing draw",
    words: "phantom alarm clock parasitic van",
    unit: "A",
    idle: null,
    working: range(0.5, 1.2, 2),
    use: "always",
    source: `1.2 A ${AUDIT}; range our own guess`,
  },
  {
    id: "furnace",
    name: "Furnace fan",
    words: "heater heating blower",
    unit: "A",
    idle: null,
    working: range(8, 11, 12),
    use: "nights",
    share: 0.3,
    source: `11 A ${AUDIT}; range and share our own guess`,
  },
  {
    id: "pump",
    name: "Water pump",
    words: "tap",
    unit: "A",
    idle: null,
    working: range(5, 6, 7),
    share: 0.01,
    source: `6 A ${AUDIT}; range and share our own guess`,
  },
  {
    id: "breathing",
    name: "Breathing machine, no humidifier",
    words: "sleep apnoea cpap medical",
    unit: "A",
    idle: null,
    working: range(0.7, 0.9, 2),
    use: "nights",
    source: `0.9 A ${AUDIT}; range our own guess`,
  },
]);
