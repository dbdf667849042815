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
];
