import { createSignal } from "solid-js";

const KEY = "duskline.light";
const LIGHTS = ["day", "dusk", "red"] as const;
type Light = (typeof LIGHTS)[number];

export const LIGHT_WORDS: Record<Light, string> = { day: "Day", dusk: "Dusk", red: "Red, dim" };

function remembered(): Light | null {
  try {
    return LIGHTS.find((light) => light === localStorage.getItem(KEY)) ?? null;
  } catch {
    return null; // storage may be forbidden; the switch still works for as long as the page is open
  }
}

/** The light that the page is read by: what was chosen before, else what the system prefers. */
export function makeTheme() {
  const prefersDark = matchMedia("(prefers-color-scheme: dark)").matches;
  const [light, setLight] = createSignal<Light>(remembered() ?? (prefersDark ? "dusk" : "day"));
  const show = () => {
    document.documentElement.dataset.light = light();
  };
  show();
  return {
    light,
    /** The next of day, dusk and red. */
    turn(): void {
      setLight(LIGHTS[(LIGHTS.indexOf(light()) + 1) % LIGHTS.length]!);
      show();
      try {
        localStorage.setItem(KEY, light());
      } catch {
        // see above
      }
    },
  };
}
