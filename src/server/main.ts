import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { calculations } from "../core/registry/all.ts";
import { DatabaseRefused } from "../store/database-refused.ts";
import { SqliteStore } from "../store/sqlite-store.ts";
import { createApp } from "./app.ts";
import { beginFirstNotebook } from "./first-notebook.ts";
import { listen, stop } from "./listen.ts";
import { readSettings } from "./settings.ts";
import { StartUpProblem } from "./start-up-problem.ts";

const pagesFolder = fileURLToPath(new URL("../web", import.meta.url));
const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
const isLoopback = (host: string): boolean =>
  host === "localhost" || host === "::1" || host.startsWith("127.");

async function start(): Promise<string> {
  const settings = readSettings(process.env, process.cwd());
  const store = await SqliteStore.open(settings.folder);
  console.log(`The notebooks are kept in ${settings.folder} (LACBENCH_DATA names another folder).`);
  const { firstNotebook, host } = settings;
  if (firstNotebook !== undefined && (await beginFirstNotebook(store, firstNotebook)))
    console.log(`A notebook was begun there (${firstNotebook}).`);
  const loopbackOnly = isLoopback(host);
  const onError = (error: unknown) => console.error(error);
  const app = createApp({ store, calculations, version, pagesFolder, loopbackOnly, onError });
  const { server, address } = await listen(app, settings);
  for (const signal of ["SIGTERM", "SIGINT"] as const)
    process.once(signal, async () => {
      await stop(server);
      await store.close();
      process.exit(0);
    });
  console.log(`Lacbench is at ${address}`);
  return address;
}

async function startOrSayWhy(): Promise<string> {
  try {
    return await start();
  } catch (error) {
    if (!(error instanceof StartUpProblem || error instanceof DatabaseRefused)) throw error;
    console.error(error.message);
    process.exit(1);
  }
}

/** Where this server listens; it does once this module is loaded. */
export const address = await startOrSayWhy();
