import { resolve } from "node:path";
import { StartUpProblem } from "./start-up-problem.ts";

export const firstNotebooks = ["empty", "demo"] as const;
export type FirstNotebook = (typeof firstNotebooks)[number];

/** What the environment says of how to run. */
export interface Settings {
  readonly port: number;
  readonly host: string;
  /** Nobody named a host: this machine alone, until the shop is paired. */
  readonly hostIsDefault: boolean;
  /** Where phones come in over TLS, once the shop is paired. */
  readonly securePort: number;
  readonly folder: string;
  /** The notebook to begin with where there is none; absent, and the pages ask. */
  readonly firstNotebook?: FirstNotebook;
}

const defaults = { port: "4680", host: "127.0.0.1", folder: ".lacbench" } as const;

function portOf(text: string, name = "PORT"): number {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port <= 65_535) return port;
  throw new StartUpProblem(
    `${name} is ${text}: a whole number from 0 to 65535 would do (0 takes any free one).`,
  );
}

function firstNotebookOf(text: string): FirstNotebook {
  const found = firstNotebooks.find((name) => name === text);
  if (found !== undefined) return found;
  throw new StartUpProblem(`LACBENCH_NOTEBOOK is ${text}: ${firstNotebooks.join(" or ")} would do.`);
}

/** @throws StartUpProblem for a setting that will not do */
export function readSettings(env: Readonly<Record<string, string | undefined>>, cwd: string): Settings {
  const set = (name: string): string | undefined => env[name]?.trim() || undefined; // set to nothing is not set
  const first = set("LACBENCH_NOTEBOOK");
  const port = portOf(set("PORT") ?? defaults.port);
  const nextPort = port === 0 ? 0 : Math.min(port + 1, 65_535);
  return {
    port,
    securePort: portOf(set("SECURE_PORT") ?? String(nextPort), "SECURE_PORT"),
    hostIsDefault: set("HOST") === undefined,
    host: set("HOST") ?? defaults.host,
    folder: resolve(cwd, set("LACBENCH_DATA") ?? defaults.folder),
    ...(first === undefined ? {} : { firstNotebook: firstNotebookOf(first) }),
  };
}
