import { X509Certificate } from "node:crypto";
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { isIP } from "node:net";
import { hostname, networkInterfaces } from "node:os";
import { join, resolve } from "node:path";
import { StartUpProblem } from "../start-up-problem.ts";
import { type Certified, covers, makeAuthority, makeLeaf, speaksFor } from "./authority.ts";

/** How a shop was paired: the names that it goes by besides its own, and a certificate of the person's own. */
interface ShopSettings {
  readonly hosts: readonly string[];
  readonly own?: { readonly certificate: string; readonly key: string };
}

const folderOf = (data: string): string => join(data, "pairing");
export const shopFile = (data: string): string => join(folderOf(data), "shop.json");
export const isPaired = (data: string): boolean => existsSync(shopFile(data));

/** Written beside and moved into place, and never readable by anybody else, not even for a moment. */
export function writePrivately(path: string, text: string): void {
  const beside = `${path}.new`;
  writeFileSync(beside, text, { mode: 0o600 });
  chmodSync(beside, 0o600); // an older file beside it may have been wider
  renameSync(beside, path);
}

/** What others may read of a key is no key any more. */
function readPrivate(path: string): string {
  const { mode } = statSync(path);
  if (process.platform !== "win32" && (mode & 0o077) !== 0)
    throw new StartUpProblem(`${path} can be read by others: chmod 600 would do, if nobody has read it yet.`);
  return readFileSync(path, "utf8");
}

/** Every name and address that this machine goes by on its network. */
export function ownHosts(): { readonly names: readonly string[]; readonly addresses: readonly string[] } {
  const name = hostname()
    .toLowerCase()
    .replace(/\.local$/, "");
  const isName = /^[a-z0-9]([a-z0-9.-]*[a-z0-9])?$/.test(name);
  const addresses = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, scopeid }) => !internal && !scopeid)
    .map(({ address }) => address);
  return {
    names: isName ? [...new Set([name.includes(".") ? name : `${name}.local`, name])] : [],
    addresses,
  };
}

export const readShop = (data: string): ShopSettings => JSON.parse(readFileSync(shopFile(data), "utf8"));

function hostsOf({ hosts }: ShopSettings) {
  const own = ownHosts();
  const names = [...new Set([...hosts.filter((host) => isIP(host) === 0), ...own.names, "localhost"])];
  const addresses = [
    ...new Set([...hosts.filter((host) => isIP(host) !== 0), ...own.addresses, "127.0.0.1"]),
  ];
  return { names, addresses };
}

const paths = (data: string) => ({
  authority: join(folderOf(data), "authority.crt"),
  authorityKey: join(folderOf(data), "authority.key"),
  leaf: join(folderOf(data), "server.crt"),
  leafKey: join(folderOf(data), "server.key"),
});

/** Makes what a shop needs to let phones in, once; later calls only take in what is new. Nothing is thrown away. */
export function pairShop(data: string, asked: ShopSettings, now: Date): void {
  mkdirSync(folderOf(data), { recursive: true, mode: 0o700 });
  chmodSync(folderOf(data), 0o700);
  const before = isPaired(data) ? readShop(data) : { hosts: [] };
  const own = asked.own ?? before.own;
  const settings = {
    hosts: [...new Set([...asked.hosts, ...before.hosts])],
    ...(own === undefined ? {} : { own }),
  };
  if (own === undefined) {
    const at = paths(data);
    const { names, addresses } = hostsOf(settings);
    if (!existsSync(at.authorityKey)) {
      const made = makeAuthority(names[0] ?? "this shop", names, addresses, now);
      writePrivately(at.authority, made.certificate);
      writePrivately(at.authorityKey, made.key);
    }
    renewLeaf(data, settings, now);
  } else readOwn(own);
  writePrivately(shopFile(data), `${JSON.stringify(settings, null, 2)}\n`);
}

/** A person's own certificate, looked at before it is taken. */
function readOwn(own: { readonly certificate: string; readonly key: string }): Certified {
  const read = (path: string) => {
    try {
      return readFileSync(resolve(path), "utf8");
    } catch (error) {
      throw new StartUpProblem(`${path} cannot be read (${(error as NodeJS.ErrnoException).code}).`);
    }
  };
  const pair = { certificate: read(own.certificate), key: read(own.key) };
  try {
    new X509Certificate(pair.certificate);
  } catch {
    throw new StartUpProblem(
      `${own.certificate} is no certificate: a PEM file, the server's first, would do.`,
    );
  }
  return pair;
}

/** Renews the server's certificate when the machine goes by other addresses than it says, or it runs out within a month. */
function renewLeaf(data: string, settings: ShopSettings, now: Date): void {
  const at = paths(data);
  const { names, addresses } = hostsOf(settings);
  if (
    existsSync(at.leaf) &&
    existsSync(at.leafKey) &&
    covers(readFileSync(at.leaf, "utf8"), [...names, ...addresses], now)
  )
    return;
  const authority = { certificate: readFileSync(at.authority, "utf8"), key: readPrivate(at.authorityKey) };
  const made = makeLeaf(authority, names, addresses, now);
  writePrivately(at.leafKey, made.key);
  writePrivately(at.leaf, made.certificate);
}

export interface Shop {
  /** What the server shows. */
  readonly served: Certified;
  /** The shop's own authority, which a phone must be told to trust; null for a person's own certificate. */
  readonly authority: string | null;
  /** Where phones find this machine, the likeliest first. */
  readonly hosts: readonly string[];
}

/** What the server needs of a shop that is paired, its certificate renewed if need be. */
export function openShop(data: string, now: Date): Shop {
  const settings = readShop(data);
  const { names, addresses } = hostsOf(settings);
  const all = [
    ...settings.hosts,
    ...ownHosts().addresses.filter((one) => isIP(one) === 4),
    ...names,
    ...addresses,
  ];
  const outside = [...new Set(all)].filter((host) => host !== "localhost" && host !== "127.0.0.1");
  if (settings.own !== undefined) {
    const served = readOwn(settings.own);
    const certificate = new X509Certificate(served.certificate);
    const [named] = certificate.subjectAltName?.match(/(?<=DNS:)[^,*\s]+/) ?? [];
    const hosts = outside.filter((host) => speaksFor(certificate, host));
    return { served, authority: null, hosts: hosts.length > 0 || named === undefined ? hosts : [named] };
  }
  renewLeaf(data, settings, now);
  const at = paths(data);
  return {
    served: { certificate: readFileSync(at.leaf, "utf8"), key: readPrivate(at.leafKey) },
    authority: readFileSync(at.authority, "utf8"),
    hosts: outside,
  };
}
