import { optionsOf } from "./optionsOf.ts";
import type { Verb, VerbOption } from "./verb.ts";

export const SHELLS = ["bash", "zsh", "fish"] as const;
export type Shell = (typeof SHELLS)[number];

/** A text between single quotes, for any of the three shells' words. */
const quoted = (text: string) => `'${text.replaceAll("'", "'\\''")}'`;
/** Within a fish string only the backslash and the quote are special. */
const fishQuoted = (text: string) => `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;

const spellings = (name: string, { short }: VerbOption) => [`--${name}`, ...(short === undefined ? [] : [`-${short}`])];
const wordsOf = (verb: Verb): readonly string[] => (typeof verb.takes === "object" ? verb.takes : []);
/** Whether a file may stand behind the verb. */
const takesFiles = ({ takes }: Verb) => takes === undefined || takes === "NOTEBOOK" || takes === "FILE";
const HELP = "says what a verb takes";

/** A program for a shell that completes verbs, options, what options take, and files, as they stand in the list of verbs. */
export function completionScript(shell: Shell, verbs: readonly Verb[]): string {
  return { bash: bashScript, zsh: zshScript, fish: fishScript }[shell](verbs);
}

/** What stands behind an option or a verb: words, files, or nothing that could be known. */
const replies = (takes: VerbOption["takes"]) =>
  takes === "FILE" ? "FILES" : takes === undefined ? "NOTHING" : takes.join(" ");

function bashScript(verbs: readonly Verb[]): string {
  const cases = verbs.map((verb) => {
    const all = Object.entries(optionsOf(verb));
    const after = all
      .filter(([, { type }]) => type === "string")
      .map(
        ([name, option]) => `        ${spellings(name, option).join("|")}) words=${quoted(replies(option.takes))} ;;`,
      );
    const first = takesFiles(verb) ? "FILES" : wordsOf(verb).join(" ") || "NOTHING";
    return [
      `    ${verb.name})`,
      `      options=${quoted(all.flatMap(([name, option]) => spellings(name, option)).join(" "))}`,
      `      words=${quoted(first)}`,
      '      case "$previous" in',
      ...after,
      "      esac ;;",
    ].join("\n");
  });
  const names = [...verbs.map(({ name }) => name), "help"].join(" ");
  return `# duskline for bash: put this where bash reads it, as with  source <(duskline completion bash)
_duskline() {
  local current="\${COMP_WORDS[COMP_CWORD]}" previous="\${COMP_WORDS[COMP_CWORD-1]}"
  local options='' words=''
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W ${quoted(`${names} --help --version`)} -- "$current"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
    help) words=${quoted(names)} ;;
${cases.join("\n")}
  esac
  case "$words" in
    FILES) compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -- "$current")) ;;
    NOTHING) ;;
    *) COMPREPLY=($(compgen -W "$words" -- "$current")) ;;
  esac
  case "$current" in
    -*) COMPREPLY=($(compgen -W "$options" -- "$current")) ;;
  esac
}
complete -F _duskline duskline
`;
}

function zshScript(verbs: readonly Verb[]): string {
  /** Colons and brackets part what _arguments is told. */
  const plain = (text: string) => text.replace(/[[\]:\\]/g, (each) => `\\${each}`);
  const action = (takes: VerbOption["takes"]) =>
    takes === "FILE" ? ":file:_files" : takes === undefined ? ":value:" : `:value:(${takes.join(" ")})`;
  const cases = verbs.map((verb) => {
    const specs = Object.entries(optionsOf(verb)).flatMap(([name, option]) =>
      spellings(name, option).map((spelling) =>
        quoted(`${spelling}[${plain(option.help)}]${option.type === "string" ? action(option.takes) : ""}`),
      ),
    );
    const first = takesFiles(verb)
      ? "*:file:_files"
      : wordsOf(verb).length > 0
        ? `1:word:(${wordsOf(verb).join(" ")})`
        : "*:words:";
    return `    ${verb.name}) _arguments ${[...specs, quoted(first)].join(" ")} ;;`;
  });
  const names = [...verbs, { name: "help", purpose: HELP }].map(({ name, purpose }) =>
    quoted(`${name}:${plain(purpose)}`),
  );
  return `#compdef duskline
# duskline for zsh: put this into a file _duskline in a folder of fpath
_duskline() {
  if (( CURRENT == 2 )); then
    local -a verbs
    verbs=(${names.join(" ")})
    _describe verb verbs
    return
  fi
  local verb=$words[2]
  shift words
  (( CURRENT-- ))
  case $verb in
    help) _arguments ${quoted(`1:verb:(${verbs.map(({ name }) => name).join(" ")})`)} ;;
${cases.join("\n")}
  esac
}
_duskline "$@"
`;
}

function fishScript(verbs: readonly Verb[]): string {
  const names = [...verbs.map(({ name }) => name), "help"];
  const isFirst = `not __fish_seen_subcommand_from ${names.join(" ")}`;
  const behind = (name: string) => `__fish_seen_subcommand_from ${name}`;
  const lines = verbs.flatMap((verb) => [
    `complete -c duskline -f -n ${fishQuoted(isFirst)} -a ${verb.name} -d ${fishQuoted(verb.purpose)}`,
    ...(takesFiles(verb) ? [`complete -c duskline -F -n ${fishQuoted(behind(verb.name))}`] : []),
    ...(wordsOf(verb).length > 0
      ? [`complete -c duskline -f -n ${fishQuoted(behind(verb.name))} -a ${fishQuoted(wordsOf(verb).join(" "))}`]
      : []),
    ...Object.entries(optionsOf(verb)).map(([name, { short, type, takes, help }]) => {
      const value =
        type === "boolean"
          ? ""
          : takes === "FILE"
            ? " -r -F"
            : takes === undefined
              ? " -x"
              : ` -x -a ${fishQuoted(takes.join(" "))}`;
      return `complete -c duskline -n ${fishQuoted(behind(verb.name))} -l ${name}${short === undefined ? "" : ` -s ${short}`}${value} -d ${fishQuoted(help)}`;
    }),
  ]);
  return `# duskline for fish: put this into ~/.config/fish/completions/duskline.fish
complete -c duskline -f -n ${fishQuoted(isFirst)} -a help -d ${fishQuoted(HELP)}
complete -c duskline -f -n ${fishQuoted(behind("help"))} -a ${fishQuoted(verbs.map(({ name }) => name).join(" "))}
${lines.join("\n")}
`;
}
