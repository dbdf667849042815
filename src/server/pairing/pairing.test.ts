import { X509Certificate } from "node:crypto";
import { chmodSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { MemoryStore } from "../../store/memory-store.ts";
import { createApp } from "../app.ts";
import { covers } from "./authority.ts";
import { Phones, phonesFile } from "./phones.ts";
import { openShop, pairShop } from "./shop.ts";

let folder: string;
let now = new Date();
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "lacbench-pairing-"));
  now = new Date("2026-10-14T17:00:00Z");
});
afterEach(() => rmSync(folder, { recursive: true }));

const device = "01a00000-0000-7000-8000-00000000000a";
const phones = () => new Phones(folder, () => now);

test("a code lets in one device, once, for ten minutes; neither codes nor passes stand in the file", () => {
  const list = phones();
  const { code } = list.newCode();
  expect(list.letIn("guess", { name: "A", device, secure: true })).toBe("code-unknown");
  const answer = list.letIn(code, { name: "A", device, secure: true });
  if (typeof answer === "string") throw new Error(answer);
  expect(list.letIn(code, { name: "B", device, secure: true })).toBe("code-spent");
  const kept = readFileSync(phonesFile(folder), "utf8");
  expect(kept).not.toContain(code);
  expect(kept).not.toContain(answer.token);
  expect(statSync(phonesFile(folder)).mode & 0o777).toBe(0o600);
  const late = list.newCode();
  now = new Date(now.getTime() + 10 * 60_000 + 1);
  expect(list.letIn(late.code, { name: "C", device, secure: true })).toBe("code-too-old");
});

test("the same device twice stands once in the list, under its new pass; taken off, it is nobody", () => {
  const list = phones();
  const enter = (name: string) => {
    const answer = list.letIn(list.newCode().code, { name, device, secure: true });
    if (typeof answer === "string") throw new Error(answer);
    return answer;
  };
  const first = enter("A");
  const second = enter("Ann’s");
  expect(list.list().map(({ id, name }) => [id, name])).toEqual([[first.phone.id, "Ann’s"]]);
  expect(list.of(first.token)).toBeUndefined();
  expect(list.of(second.token)?.name).toBe("Ann’s");
  expect(list.revoke(first.phone.id)).toBe(true);
  expect(list.of(second.token)).toBeUndefined();
  expect(list.revoke("nobody")).toBe(false);
});

test("a shop’s certificate speaks for its names, is made anew for a new one, and its authority stays", () => {
  pairShop(folder, { hosts: ["shop.local"] }, now);
  const first = openShop(folder, now);
  expect(covers(first.served.certificate, ["shop.local", "127.0.0.1"], now)).toBe(true);
  expect(
    new X509Certificate(first.served.certificate).verify(
      new X509Certificate(first.authority ?? "").publicKey,
    ),
  ).toBe(true);
  pairShop(folder, { hosts: ["bench.local"] }, now);
  const second = openShop(folder, now);
  expect(second.authority).toBe(first.authority);
  expect(covers(second.served.certificate, ["shop.local", "bench.local"], now)).toBe(true);
  // A year on it has run out, and is renewed at the next start.
  const later = new Date(now.getTime() + 380 * 86_400_000);
  expect(covers(second.served.certificate, ["shop.local"], later)).toBe(false);
  expect(covers(openShop(folder, later).served.certificate, ["shop.local"], later)).toBe(true);
});

test("a key that others may read is refused with what to do", () => {
  pairShop(folder, { hosts: [] }, now);
  chmodSync(join(folder, "pairing/server.key"), 0o644);
  expect(() => openShop(folder, now)).toThrow(/can be read by others: chmod 600/);
});

test("a certificate of one’s own is taken, and shown as it is", () => {
  pairShop(folder, { hosts: ["shop.local"] }, now);
  const own = { certificate: join(folder, "pairing/server.crt"), key: join(folder, "pairing/server.key") };
  const other = mkdtempSync(join(tmpdir(), "lacbench-own-"));
  pairShop(other, { hosts: ["shop.local"], own }, now);
  const shop = openShop(other, now);
  expect(shop.authority).toBeNull();
  expect(shop.served.certificate).toBe(readFileSync(own.certificate, "utf8"));
  expect(shop.hosts[0]).toBe("shop.local");
  expect(() => pairShop(other, { hosts: [], own: { ...own, certificate: own.key } }, now)).toThrow(
    /is no certificate/,
  );
  rmSync(other, { recursive: true });
});

test("who is not let in reads no notebook, whatever name it asks for; the list is for this machine alone", async () => {
  const list = phones();
  const onError = (error: unknown) => {
    throw error;
  };
  const pairing = { phones: list, doors: () => null };
  const app = createApp({ store: new MemoryStore(), calculations: [], version: "0", pairing, onError });
  const ask = (path: string, from: string, host: string, cookie = "") =>
    app.request(
      `http://${host}${path}`,
      { headers: { host, ...(cookie === "" ? {} : { cookie }) } },
      { incoming: { socket: { remoteAddress: from } } },
    );
  expect((await ask("/api/notebooks", "127.0.0.1", "localhost:4680")).status).toBe(200);
  expect((await ask("/api/notebooks", "192.168.1.7", "localhost:4680")).status).toBe(401);
  // A foreign name that was pointed at this machine, from a page in its own browser.
  expect((await ask("/api/notebooks", "127.0.0.1", "elsewhere.example")).status).toBe(401);
  const answer = list.letIn(list.newCode().code, { name: "A", device, secure: true });
  if (typeof answer === "string") throw new Error(answer);
  const cookie = `lacbench-phone=${answer.token}`;
  expect((await ask("/api/notebooks", "192.168.1.7", "shop.local:4680", cookie)).status).toBe(200);
  expect((await ask("/api/phones", "192.168.1.7", "shop.local:4680", cookie)).status).toBe(403);
  expect((await ask("/api/phones", "127.0.0.1", "localhost:4680")).status).toBe(200);
});
