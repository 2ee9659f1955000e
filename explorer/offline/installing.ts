import { createSignal } from "solid-js";

/** What a browser hands over where it would install the page (W3C Manifest Incubations, BeforeInstallPromptEvent); it asks once. */
interface InstallPrompt extends Event {
  prompt(): Promise<unknown>;
}

const [offer, setOffer] = createSignal<InstallPrompt | null>(null);

/** Whether this browser would install the page here and now. */
export const canInstall = () => offer() !== null;

/** Takes what the browser offers, so that it stands where it is looked for and not over the page. */
export function watchInstalling(): void {
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    setOffer(() => event as InstallPrompt);
  });
  addEventListener("appinstalled", () => setOffer(null));
}

/** Lets the browser ask whether the page shall be installed. */
export function install(): void {
  const prompt = offer();
  setOffer(null);
  void prompt?.prompt();
}
