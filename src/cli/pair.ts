import { existsSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { encodeQR } from "qr";
import { type Listening, listeningFile } from "../server/doors.ts";
import { fingerprint } from "../server/pairing/authority.ts";
import { type Doors, letInAddress } from "../server/pairing/phone-routes.ts";
import { codeMinutes, Phones } from "../server/pairing/phones.ts";
import { openShop, pairShop } from "../server/pairing/shop.ts";
import { readSettings, type Settings } from "../server/settings.ts";
import { StartUpProblem } from "../server/start-up-problem.ts";
import { CliError } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { dataOption } from "./data-folder.ts";
import type { Effects } from "./effects.ts";

export const command = defineCommand({
  usage: "pair [--host NAME] [--certificate FILE --key FILE] | --list | --revoke PHONE",
  positionals: 0,
  options: {
    ...dataOption,
    host: {
      type: "string",
      multiple: true,
      value: "NAME",
      description: "a name or address of this machine by which phones find it, first in the code",
    },
    certificate: {
      type: "string",
      value: "FILE",
      description: "a certificate of your own (PEM), instead of the shop’s",
    },
    key: { type: "string", value: "FILE", description: "its private key (PEM)" },
    list: { type: "boolean", description: "the phones that were let in" },
    revoke: {
      type: "string",
      value: "PHONE",
      description: "let this phone in no longer (its id, as --list shows it)",
    },
  },
  async run({ values }, effects) {
    const env = values.data === undefined ? effects.env : { ...effects.env, LACBENCH_DATA: values.data };
    try {
      const settings = readSettings(env, effects.cwd);
      const phones = new Phones(settings.folder, () => new Date());
      if (values.list === true) return list(phones, values.json === true, effects);
      if (values.revoke !== undefined) return revoke(phones, values.revoke, effects);
      const own = ownCertificate(values.certificate, values.key, effects.cwd);
      pairShop(
        settings.folder,
        { hosts: (values.host ?? []).map((host) => host.toLowerCase()), ...own },
        new Date(),
      );
      await invite(settings, phones, values.json === true, effects);
    } catch (error) {
      if (error instanceof StartUpProblem) throw new CliError(error.message);
      throw error;
    }
  },
});

function ownCertificate(certificate: string | undefined, key: string | undefined, cwd: string) {
  if (certificate === undefined && key === undefined) return {};
  if (certificate === undefined || key === undefined)
    throw new CliError("--certificate and --key belong together: both files would do.", 2);
  return { own: { certificate: resolve(cwd, certificate), key: resolve(cwd, key) } };
}

function list(phones: Phones, json: boolean, effects: Effects): void {
  const all = phones.list();
  if (json) effects.stdout(`${JSON.stringify(all, null, 2)}\n`);
  else if (all.length === 0) effects.stderr("No phone was let in yet.\n");
  if (json) return;
  for (const { id, name, letInAt, secure, revokedAt } of all) {
    const state = revokedAt === undefined ? (secure ? "" : "  (plain HTTP)") : `  taken off ${revokedAt}`;
    effects.stdout(`${id}  ${letInAt}  ${name}${state}\n`);
  }
}

function revoke(phones: Phones, id: string, effects: Effects): void {
  if (!phones.revoke(id)) throw new CliError(`There is no phone ${id}. lacbench pair --list names them.`, 2);
  effects.stderr("It is not let in any more. What it has not sent stays on it.\n");
}

/** A server that runs on this folder, once it has opened its doors to the network. */
async function running(folder: string): Promise<Listening | null> {
  const path = listeningFile(folder);
  for (let tries = 0; tries < 20; tries++) {
    if (!existsSync(path)) return null;
    const listening: Listening = JSON.parse(readFileSync(path, "utf8"));
    if (!isAlive(listening.pid)) return null;
    if (listening.securePort !== null) return listening;
    await wait(200);
  }
  return null;
}

function isAlive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** A new code, as an address and as a drawing that a phone reads from the screen. */
async function invite(settings: Settings, phones: Phones, json: boolean, effects: Effects): Promise<void> {
  const shop = openShop(settings.folder, new Date());
  const [host] = shop.hosts;
  if (host === undefined)
    throw new CliError("This machine has no name or address on a network. --host NAME names one.");
  const server = await running(settings.folder);
  const doors: Doors = {
    ...shop,
    plainPort: server?.plainPort ?? settings.port,
    securePort: server?.securePort ?? settings.securePort,
  };
  const { code, until } = phones.newCode();
  const address = letInAddress(doors, host, code);
  const sha256 = shop.authority === null ? null : fingerprint(shop.authority);
  if (json)
    return effects.stdout(
      `${JSON.stringify({ address, until, fingerprint: sha256, running: server !== null }, null, 2)}\n`,
    );
  if (server === null)
    effects.stderr("Lacbench does not run here yet: start it (npm start) before you go on.\n\n");
  effects.stdout(`${encodeQR(address, "ascii", { border: 2 })}\n${address}\n`);
  effects.stderr(`\nScan it with the phone within ${codeMinutes} minutes. It lets in one phone, once.\n`);
  if (sha256 !== null)
    effects.stderr(
      `The phone is led through trusting this shop's certificate. Compare its SHA-256 there:\n  ${sha256}\n` +
        `Its key is in ${join(settings.folder, "pairing")}, readable by you alone; whoever has it can pass for this shop.\n`,
    );
}
