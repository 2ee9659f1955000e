import { GENERIC_GEAR } from "../gear/gearTable.ts";
import { nearestName } from "../nearestName.ts";
import {
  BACKUP,
  CHEMISTRY,
  CONTROLLERS,
  HOURS,
  KEENNESS,
  MODES,
  PLACING,
  RADIOS,
  ratedWOf,
  SHADE,
  type StartAnswers,
} from "../start/startScenario.ts";
import { clockMsOf } from "../zoneTime.ts";

/** What an answer comes to, or why it is none, as the end of a sentence: "but must be …". */
type Read =
  | { readonly ok: true; readonly answers: Partial<StartAnswers> }
  | { readonly ok: false; readonly must: string };

/** One thing that a plan starts from: an option of `new`, and a question where somebody sits at the keyboard. */
export interface NewQuestion {
  readonly option: string;
  readonly help: string;
  readonly takes?: readonly string[];
  /** How it is asked; null for what decides less: that is taken as usual unless its option says otherwise. */
  readonly asked: string | null;
  /** Whether nothing usual will do where nobody is asked. */
  readonly isNeeded?: boolean;
  /** Whether answers so far leave nothing to ask. */
  readonly isIdle?: (answers: StartAnswers) => boolean;
  /** What stands now, as it would be typed. */
  readonly now: (answers: StartAnswers) => string;
  /** What a text answers. @param answers all that is known so far */
  readonly read: (text: string, answers: StartAnswers) => Read;
}

const taken = (answers: Partial<StartAnswers>): Read => ({ ok: true, answers });
const must = (words: string): Read => ({ ok: false, must: words });

const numberIn = (text: string, low: number, high: number): number | null => {
  const value = text.trim() === "" ? Number.NaN : Number(text.trim().replace(",", "."));
  return value >= low && value <= high ? value : null;
};

/** One of some words, by name or by the beginning of one that no other has. */
function choice<
  Key extends "hours" | "keenness" | "mode" | "placing" | "controller" | "backup" | "chemistry" | "shade" | "radio",
>(key: Key, known: Readonly<Record<string, unknown>>): Pick<NewQuestion, "takes" | "now" | "read"> {
  const names = Object.keys(known);
  return {
    takes: names,
    now: (answers) => answers[key],
    read: (text) => {
      const begun = names.filter((name) => text !== "" && name.toLowerCase().startsWith(text.trim().toLowerCase()));
      const found = names.find((name) => name === text.trim()) ?? (begun.length === 1 ? begun[0] : undefined);
      if (found !== undefined) return taken({ [key]: found } as Partial<StartAnswers>);
      const meant = nearestName(text.trim(), names);
      return must(`one of ${names.join(", ")}${meant === null ? "" : `; did you mean ${meant}?`}`);
    },
  };
}

/** "2x100": how many, and how much each; a number alone is one of it. */
function pieces(text: string, most: number, low: number, high: number): readonly [number, number] | null {
  const match = /^\s*(?:(\d{1,3})\s*[x×*]\s*)?([\d.,]+)\s*(?:[a-z]*)\s*$/i.exec(text);
  const count = Number(match?.[1] ?? 1);
  const each = match === null ? null : numberIn(match[2]!, low, high);
  return each === null || count < 1 || count > most ? null : [count, each];
}

const LOCAL = "a local time such as 2026-10-09T14:00";
/** A local time as people write it: a T or a space between, the hour left out where it is noon. */
function localTime(text: string): string | null {
  const match = /^\s*(\d{4}-\d{2}-\d{2})(?:[T ]+(\d{1,2}:\d{2}))?\s*$/.exec(text);
  if (match === null) return null;
  const time = `${match[1]}T${(match[2] ?? "12:00").padStart(5, "0")}`;
  return clockMsOf(time) === null ? null : time;
}

const DAY_MS = 86_400_000;
const LONGEST_DAYS = 60;

function readEnd(text: string, { start }: StartAnswers): Read {
  const end = localTime(text);
  if (end === null) return must(LOCAL);
  const ms = clockMsOf(end)! - clockMsOf(start)!;
  if (ms > 0 && ms <= LONGEST_DAYS * DAY_MS) return taken({ end });
  return must(`after the beginning (${start.replace("T", " ")}), and at most ${LONGEST_DAYS} days later`);
}

function readPosition(text: string): Read {
  const match = /^\s*(-?\d+(?:\.\d+)?)\s*[,; ]\s*(-?\d+(?:\.\d+)?)\s*$/.exec(text);
  const [latitudeDeg, longitudeDeg] = [Number(match?.[1]), Number(match?.[2])];
  if (match !== null && Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180)
    return taken({ latitudeDeg, longitudeDeg });
  return must("latitude and longitude in degrees, north and east positive, such as 46.93,15.62");
}

const MOST_OF_A_KIND = 20;
const WITHOUT_RADIO = GENERIC_GEAR.filter(({ radio }) => radio === null).map(({ id }) => id);

/** "laptop, router, lamp:2", or none. */
function readGear(text: string): Read {
  const gear: Record<string, number> = {};
  for (const word of text.split(/[,;]/).map((each) => each.trim())) {
    if (word === "" || word === "none") continue;
    const [id, count = "1"] = word.split(/[:x×]\s*(?=\d+$)/);
    const number = numberIn(count, 1, MOST_OF_A_KIND);
    if (number === null || !Number.isInteger(number))
      return must(`kinds of gear with how many of each, up to ${MOST_OF_A_KIND}, such as lamp:2`);
    if (!WITHOUT_RADIO.includes(id!)) {
      const meant = nearestName(id!, WITHOUT_RADIO);
      return must(
        `kinds on the gear shelf, and "${id}" is none; ${meant === null ? "duskline gear all lists them" : `did you mean ${meant}?`}`,
      );
    }
    gear[id!] = (gear[id!] ?? 0) + number;
  }
  return taken({ gear });
}

const gearNow = ({ gear }: StartAnswers) =>
  Object.entries(gear)
    .filter(([, count]) => count > 0)
    .map(([id, count]) => (count === 1 ? id : `${id}:${count}`))
    .join(",") || "none";

const nobodyOperates = ({ stations }: StartAnswers) => stations === 0;

/** In the order in which they are asked: what decides most comes first. */
export const NEW_QUESTIONS: readonly NewQuestion[] = [
  {
    option: "name",
    help: "what place and plan are called",
    asked: "What is the place called?",
    now: ({ placeName }) => placeName,
    read: (text) => {
      const placeName = text.trim();
      return placeName.length >= 1 && placeName.length <= 200
        ? taken({ placeName })
        : must("a name of 1 to 200 letters");
    },
  },
  {
    option: "at",
    help: "where it is: latitude and longitude in degrees, such as 46.93,15.62",
    asked: "Where is it? Latitude and longitude in degrees",
    isNeeded: true,
    now: ({ latitudeDeg, longitudeDeg }) => `${latitudeDeg},${longitudeDeg}`,
    read: readPosition,
  },
  {
    option: "from",
    help: "when it begins by the local clock, such as 2026-10-09T14:00",
    asked: "When does it begin, by the local clock?",
    isNeeded: true,
    now: ({ start }) => start.replace("T", " "),
    read: (text) => {
      const start = localTime(text);
      if (start === null) return must(LOCAL);
      // A weekend like the one before, where nothing else is said.
      return taken({ start, end: new Date(clockMsOf(start)! + 2 * DAY_MS).toISOString().slice(0, 16) });
    },
  },
  {
    option: "to",
    help: "when it ends, at most 60 days later",
    asked: "When does it end?",
    isNeeded: true,
    now: ({ end }) => end.replace("T", " "),
    read: readEnd,
  },
  {
    option: "bank",
    help: "batteries of 12 V: ampere-hours, such as 100 or 2x100",
    asked: "Batteries of 12 V, in ampere-hours (2x100 is two of 100)?",
    now: ({ blocks, blockAh }) => (blocks === 1 ? `${blockAh}` : `${blocks}x${blockAh}`),
    read: (text) => {
      const found = pieces(text, 8, 5, 600);
      return found === null
        ? must("ampere-hours from 5 to 600, up to 8 batteries, such as 100 or 2x100")
        : taken({ blocks: found[0], blockAh: found[1] });
    },
  },
  {
    option: "chemistry",
    help: "what kind of batteries",
    asked: "What kind of batteries?",
    ...choice("chemistry", CHEMISTRY),
  },
  {
    option: "panels",
    help: "panels in rated watts, such as 200 or 2x100; 0 for none",
    asked: "Panels, in rated watts (2x100 is two of 100, 0 is none)?",
    now: ({ panels, panelW }) => (panels === 0 ? "0" : panels === 1 ? `${panelW}` : `${panels}x${panelW}`),
    read: (text) => {
      if (/^\s*(0|none)\s*$/.test(text)) return taken({ panels: 0 });
      const found = pieces(text, 20, 5, 600);
      return found === null
        ? must("watts from 5 to 600 each, up to 20 panels, such as 200 or 2x100, or 0")
        : taken({ panels: found[0], panelW: found[1] });
    },
  },
  {
    option: "shade",
    help: "what stands around the panels",
    asked: "What stands around the panels?",
    isIdle: ({ panels }) => panels === 0,
    ...choice("shade", SHADE),
  },
  {
    option: "stations",
    help: "how many operate at once, 0 to 10",
    asked: "How many stations operate at once?",
    now: ({ stations }) => `${stations}`,
    read: (text) => {
      const stations = numberIn(text, 0, 10);
      return stations === null || !Number.isInteger(stations)
        ? must("a whole number from 0 to 10")
        : taken({ stations });
    },
  },
  {
    option: "radio",
    help: "what radio each station has",
    asked: "What radios?",
    isIdle: nobodyOperates,
    ...choice("radio", RADIOS),
    read: (text, answers) => {
      const read = choice("radio", RADIOS).read(text, answers);
      // Full power, unless --power says less.
      return read.ok ? taken({ ...read.answers, transmitW: ratedWOf(read.answers.radio!) }) : read;
    },
  },
  {
    option: "hours",
    help: "when somebody operates",
    asked: "When does somebody operate?",
    isIdle: nobodyOperates,
    ...choice("hours", HOURS),
  },
  {
    option: "keenness",
    help: "how much is sent",
    asked: "How much is sent?",
    isIdle: nobodyOperates,
    ...choice("keenness", KEENNESS),
  },
  {
    option: "gear",
    help: "what else comes along, by its kind on the gear shelf: laptop,router,lamp:2; or none",
    asked: "What else comes along, by its kind on the gear shelf (lamp:2 is two)?",
    now: gearNow,
    read: readGear,
  },
  {
    option: "power",
    help: "watts sent; the radio's full power when left out",
    asked: null,
    now: ({ transmitW }) => `${transmitW}`,
    read: (text, { radio }) => {
      const transmitW = numberIn(text, 0.1, ratedWOf(radio));
      return transmitW === null ? must(`watts from 0.1 to the radio's ${ratedWOf(radio)}`) : taken({ transmitW });
    },
  },
  { option: "mode", help: "how it is sent", asked: null, ...choice("mode", MODES) },
  { option: "placing", help: "how the panels stand", asked: null, ...choice("placing", PLACING) },
  { option: "controller", help: "kind of solar controller", asked: null, ...choice("controller", CONTROLLERS) },
  { option: "backup", help: "what else charges", asked: null, ...choice("backup", BACKUP) },
  {
    option: "elevation",
    help: "metres above the sea",
    asked: null,
    now: ({ elevationM }) => `${elevationM}`,
    read: (text) => {
      const elevationM = numberIn(text, -450, 6000);
      return elevationM === null ? must("metres from -450 to 6000") : taken({ elevationM });
    },
  },
];
