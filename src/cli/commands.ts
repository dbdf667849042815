import type { Command } from "./command.ts";

export interface CommandEntry {
  readonly name: string;
  /** One line, for the list of commands and at the top of its own help. */
  readonly purpose: string;
  readonly load: () => Promise<{ readonly command: Command }>;
}

/** Every command, in the order in which they are listed; each is loaded when it is asked for. */
export const commands: readonly CommandEntry[] = [
  {
    name: "calc",
    purpose: "One calculation: JSON in, JSON out. Without a name, the list of them.",
    load: () => import("./calc.ts"),
  },
  {
    name: "mix",
    purpose: "A jar mixed to a cut: what to measure out, what it makes, and how sure the cut is.",
    load: () => import("./mix.ts"),
  },
  {
    name: "thin",
    purpose: "Alcohol to add to a stock for a weaker cut, and what the simple ratio would have given.",
    load: () => import("./thin.ts"),
  },
  {
    name: "jars",
    purpose: "The jars of a notebook: cut, water, age, state, what is left. Takes a list of jars in.",
    load: () => import("./jars.ts"),
  },
  {
    name: "dry",
    purpose:
      "How a coat dries in the shop's air: when it is dry, when it takes another, whether it turns white.",
    load: () => import("./dry.ts"),
  },
  {
    name: "film",
    purpose: "Dry film from coats, sanding counted, and how many coats of another cut come to the same.",
    load: () => import("./film.ts"),
  },
  {
    name: "air",
    purpose: "The shop's air: dew point, where wood settles, and alcohol in it against published limits.",
    load: () => import("./air.ts"),
  },
  {
    name: "layout",
    purpose: "A fair layout by lot: boards, places, codes, orders, and what it can and cannot tell.",
    load: () => import("./layout.ts"),
  },
  {
    name: "verdict",
    purpose: "Of each two levels: different, as good as equal, or not enough to tell. JSON or a table.",
    load: () => import("./verdict.ts"),
  },
  {
    name: "piece",
    purpose: "A real piece, evening by evening: what to mix, each step with its amount, and for a calendar.",
    load: () => import("./piece.ts"),
  },
  {
    name: "plan",
    purpose:
      "When to do what: an agenda of tasks, waits and evenings as sessions at the bench, and for a calendar.",
    load: () => import("./plan.ts"),
  },
  {
    name: "notebooks",
    purpose: "The notebooks that are kept here.",
    load: () => import("./notebooks.ts"),
  },
  {
    name: "export",
    purpose: "A notebook as a file: every entry as it was written, byte for byte.",
    load: () => import("./export.ts"),
  },
  {
    name: "import",
    purpose: "Takes such a file in; entries that are there already are not doubled.",
    load: () => import("./import.ts"),
  },
  {
    name: "demo",
    purpose: "The demo notebook as a file: a month of an invented restorer.",
    load: () => import("./demo.ts"),
  },
  {
    name: "pair",
    purpose:
      "Lets a phone in: makes this shop's certificate and a code to scan; lists phones, takes them off.",
    load: () => import("./pair.ts"),
  },
  {
    name: "serve",
    purpose: "The server and its pages, as npm start runs them.",
    load: () => import("./serve.ts"),
  },
];
