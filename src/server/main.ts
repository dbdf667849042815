import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { calculations } from "../core/registry/all.ts";
import { DatabaseRefused } from "../store/database-refused.ts";
import { SqliteStore } from "../store/sqlite-store.ts";
import { createApp } from "./app.ts";
import { OpenDoors } from "./doors.ts";
import { beginFirstNotebook } from "./first-notebook.ts";
import { type Pairing, secureAddresses } from "./pairing/phone-routes.ts";
import { Phones } from "./pairing/phones.ts";
import { readSettings } from "./settings.ts";
import { StartUpProblem } from "./start-up-problem.ts";

const pagesFolder = fileURLToPath(new URL("../web", import.meta.url));
const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
const now = (): Date => new Date();

async function start(): Promise<string> {
  const settings = readSettings(process.env, process.cwd());
  const store = await SqliteStore.open(settings.folder);
  console.log(`The notebooks are kept in ${settings.folder} (LACBENCH_DATA names another folder).`);
  const { firstNotebook } = settings;
  if (firstNotebook !== undefined && (await beginFirstNotebook(store, firstNotebook)))
    console.log(`A notebook was begun there (${firstNotebook}).`);
  const onError = (error: unknown) => console.error(error);
  const pairing: Pairing = { phones: new Phones(settings.folder, now), doors: () => doors.doors() };
  const loopbackOnly = () => doors.loopbackOnly();
  const app = createApp({ store, calculations, version, pagesFolder, loopbackOnly, pairing, onError });
  const doors = new OpenDoors(app, settings);
  await doors.open(onError);
  for (const signal of ["SIGTERM", "SIGINT"] as const)
    process.once(signal, async () => {
      await doors.close();
      await store.close();
      process.exit(0);
    });
  const outside = doors.doors();
  if (outside !== null)
    console.log(`Phones that were let in reach it at ${secureAddresses(outside).join(" or ")}`);
  console.log(`Lacbench is at ${doors.address}`);
  return doors.address;
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
