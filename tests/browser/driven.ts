/** A browser with one page in it, whatever drives it: no more than the walks ask for. Elements are named by XPath, which every driver takes. */
export interface Driven {
  /** As the browser calls itself. */
  readonly name: string;
  /** Errors of the page and its console. */
  readonly complaints: readonly string[];
  goTo(url: string): Promise<void>;
  /** Runs a function in the page, which sees nothing from outside of it but what it is given; a promise is waited for. */
  look<Given extends unknown[], Seen>(at: (...given: Given) => Seen, ...given: Given): Promise<Awaited<Seen>>;
  click(xpath: string): Promise<void>;
  /** Puts the keyboard's focus on an element. */
  focus(xpath: string): Promise<void>;
  /** Types over what stands in a field. */
  typeOver(xpath: string, text: string): Promise<void>;
  /** Presses keys one upon the other and lets them go together, as in Ctrl and Z. */
  press(...keys: KeyName[]): Promise<void>;
  /** Gives a file on disk to a field for files, seen or not. */
  give(xpath: string, path: string): Promise<void>;
  /** What is seen of the page, as a PNG in base 64. */
  picture(): Promise<string>;
  /** The page on paper; null where the driver prints nothing. */
  readonly pdf: (() => Promise<Uint8Array>) | null;
  /** Where the browser puts files that a page hands over; null where it hands over none. */
  readonly downloads: string | null;
  close(): Promise<void>;
}

export const KEYS = { ArrowUp: "\uE013", ArrowLeft: "\uE012", Enter: "\uE007", Control: "\uE009" } as const;
export type KeyName = keyof typeof KEYS | "a" | "y" | "z" | "+";

/** A browser that is to be tried: how it is started, or why it is not to be had. */
export type Found = { readonly start: () => Promise<Driven> } | { readonly why: string };
