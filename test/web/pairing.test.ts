import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, statSync } from "node:fs";
import { createServer } from "node:https";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { makeLeaf } from "../../src/server/pairing/authority.ts";
import { benchNotebook } from "./bench-notebook.ts";
import { keptHere, keptInHouse, writeNotes } from "./kept-here.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";
import { chromiumPath, chromiumSwitches, House, visit } from "./rig.ts";
import { homeThatTrusts } from "./shop-trust.ts";

const shop = "shop.test";
const house = new House();
let home: string;
let browser: Browser;
let invitation: Invitation;

interface Invitation {
  readonly address: string;
  readonly fingerprint: string;
  readonly running: boolean;
}

/** What a person types at the computer that keeps the notebook. */
const pair = (...args: string[]): string =>
  execFileSync(process.execPath, [join(import.meta.dirname, "../../dist/cli/bin.js"), "pair", ...args], {
    env: { ...process.env, LACBENCH_DATA: house.folder },
    encoding: "utf8",
  });
const invite = (): Invitation => JSON.parse(pair("--host", shop, "--json"));
const codeOf = ({ address }: Invitation): string => new URL(address).hash;
const plain = () => `http://${shop}:${new URL(invitation.address).port}`;
const inFolder = (name: string) => join(house.folder, "pairing", name);

let secure = "";

beforeAll(async () => {
  await house.start();
  await benchNotebook().send(house.address);
  expect(await closedToOthers()).toBe(true);
  invitation = invite();
  home = homeThatTrusts(inFolder("authority.crt"));
  // Names are told where to find this machine, as a shop's router does; certificates are looked at as ever.
  browser = await chromium.launch({
    executablePath: chromiumPath,
    args: [...chromiumSwitches, "--host-resolver-rules=MAP *.test 127.0.0.1"],
    env: { ...process.env, HOME: home },
  });
  const { port } = new URL(house.address);
  const door = await fetch(`http://127.0.0.1:${port}/api/phones/door`);
  secure = ((await door.json()) as { secureAddress: string }).secureAddress;
}, 90_000);
afterAll(async () => {
  await browser.close();
  await house.leave();
  rmSync(home, { recursive: true, force: true });
}, 30_000);

/** Whether the port answers at this machine's own address on the network, before any phone was let in. */
async function closedToOthers(): Promise<boolean> {
  const { networkInterfaces } = await import("node:os");
  const [other] = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, family }) => !internal && family === "IPv4");
  if (other === undefined) return true; // a machine without a network is closed to it
  const asked = fetch(`http://${other.address}:${new URL(house.address).port}/api/openapi.json`);
  return asked.then(
    () => false,
    () => true,
  );
}

test("keys are readable by their owner alone, and the running server opened its doors", () => {
  expect(invitation.running).toBe(true);
  expect(invitation.address).toMatch(/^http:\/\/shop\.test:\d+\/let-in#[\w-]{22}$/);
  for (const key of ["authority.key", "server.key", "phones.json"])
    expect(statSync(inFolder(key)).mode & 0o777).toBe(0o600);
});

test("over plain HTTP nobody reads the notebook unasked; the page leads through trusting the shop", {
  timeout: 90_000,
}, async () => {
  const seen = await visit(browser, plain(), "phone");
  const { page } = seen;
  await page.goto("/");
  await page.getByText("does not let this device in").waitFor();
  expect(await page.evaluate(() => [isSecureContext, "serviceWorker" in navigator])).toEqual([false, false]);
  await page.goto(`/let-in${codeOf(invitation)}`);
  await page.getByRole("heading", { name: "First: trust this shop, once" }).waitFor();
  await page.getByText(invitation.fingerprint).waitFor();
  await expectWellMade(page, "let-in-plain-phone");
  await page.getByText("iPhone, iPad").click();
  await page.getByText("Certificate Trust Settings").waitFor();
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Fetch the certificate" }).click(),
  ]);
  const der = readFileSync((await file.path()) as string);
  const { X509Certificate } = await import("node:crypto");
  expect(new X509Certificate(der).fingerprint256).toBe(invitation.fingerprint);
  expectQuiet(seen);
  await seen.context.close();
});

test("a phone that trusts the shop comes in over HTTPS, once a code, works out of reach, and is taken off", {
  timeout: 180_000,
}, async () => {
  const seen = await visit(browser, secure, "phone");
  const { page, context } = seen;
  await page.goto(`/let-in${codeOf(invitation)}`);
  await page.getByLabel("What shall this phone be called?").fill("Ann’s phone");
  await expectWellMade(page, "let-in-secure-phone");
  await page.getByRole("button", { name: "Let this phone in" }).click();
  await page.getByRole("heading", { name: "This phone is in" }).waitFor();
  expect(await page.evaluate(() => document.cookie)).toBe(""); // no script can read the pass
  await page.getByRole("link", { name: "Open the notebook" }).click();
  await page.getByRole("heading", { name: /^Coat 3 on/ }).waitFor({ timeout: 30_000 });
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);

  // The same code a second time, from another phone.
  const late = await visit(browser, secure, "phone");
  await late.page.goto(`/let-in${codeOf(invitation)}`);
  await late.page.getByRole("button", { name: "Let this phone in" }).click();
  await late.page.getByText("This code has let a device in already").waitFor();
  await late.context.close();

  // The same phone paired twice stands once in the list, and doubles nothing.
  await page.goto(`/let-in${codeOf(invite())}`);
  await page.getByRole("button", { name: "Let this phone in" }).click();
  await page.getByRole("heading", { name: "This phone is in" }).waitFor();
  await page.goto("/book");
  await writeNotes(page, ["paired twice"]);
  await page.getByText("All in the notebook").waitFor();
  expect(await page.getByText("paired twice").count()).toBe(1);
  const listed: { id: string; name: string }[] = JSON.parse(pair("--list", "--json"));
  expect(listed.map(({ name }) => name)).toEqual(["Bench phone"]);

  // Revoked at the computer: the phone says so, and keeps what it writes.
  const here = await visit(browser, house.address, "desktop");
  await here.page.goto("/book/phones");
  await here.page.getByRole("button", { name: "Let a phone in" }).click();
  await here.page.getByRole("img", { name: "Scan this with the phone" }).waitFor();
  await expectWellMade(here.page, "phones-desktop");
  await here.page.getByRole("button", { name: "Take it off: Bench phone" }).click();
  await here.page.getByText("Bench phone is not let in any more.").waitFor();
  await writeNotes(page, ["written after it was taken off"]);
  await page.getByText("Not let in: kept here, 1 to send").click({ timeout: 30_000 });
  await page.getByRole("heading", { name: "This device is not let in" }).waitFor();
  await expectWellMade(page, "keeping-barred-phone");
  const before = await keptInHouse(house.address);
  expect((await keptHere(page)).count).toBe(before.count + 1);

  // Let in again, it sends what it kept.
  await page.goto(`/let-in${codeOf(invite())}`);
  await page.getByRole("button", { name: "Let this phone in" }).click();
  await page.getByRole("heading", { name: "This phone is in" }).waitFor();
  await page.goto("/book");
  await page.getByText("All in the notebook").waitFor({ timeout: 30_000 });
  const [kept, inHouse] = [await keptHere(page), await keptInHouse(house.address)];
  expect([kept.count, kept.hash]).toEqual([inHouse.count, inHouse.hash]);
  expect(inHouse.count).toBe(before.count + 1);
  expect(seen.strayed).toEqual([]);
  await here.context.close();
  await context.close();
});

/** The other pages are fetched one after another while there is nothing else to do: all are here once no file has come for so long. */
const allPagesHere = (page: Page) =>
  page.waitForFunction(() => {
    const files = performance.getEntriesByType("resource") as PerformanceResourceTiming[];
    const ends = files.filter(({ name }) => name.includes("/assets/")).map((file) => file.responseEnd);
    return performance.now() - Math.max(...ends) > 3_000;
  });

test("without the certificate a phone can come in over plain HTTP; it logs, keeps and says what is missing", {
  timeout: 90_000,
}, async () => {
  const seen = await visit(browser, plain(), "phone");
  const { page, context } = seen;
  await page.goto(`/let-in${codeOf(invite())}`);
  await page.getByRole("button", { name: "Go on over plain HTTP" }).click();
  await page.getByRole("button", { name: "Let this phone in" }).click();
  await page.getByRole("link", { name: "Open the notebook" }).click();
  await page.getByRole("button", { name: /^Coat 3 is on/ }).waitFor({ timeout: 30_000 });
  await allPagesHere(page);
  await context.setOffline(true);
  await page.getByRole("button", { name: /^Coat 3 is on/ }).click();
  await page.getByText("Kept here, 1 to send").click();
  await page.getByText("No: this address begins with http").waitFor();
  await expectWellMade(page, "keeping-plain-phone");
  await context.setOffline(false);
  await page.getByText("All in the notebook").waitFor({ timeout: 30_000 });
  expectQuiet(seen);
  await context.close();
});

test("the shop's authority cannot speak for another site, whoever holds its key", {
  timeout: 60_000,
}, async () => {
  const authority = {
    certificate: readFileSync(inFolder("authority.crt"), "utf8"),
    key: readFileSync(inFolder("authority.key"), "utf8"),
  };
  const { certificate: cert, key } = makeLeaf(authority, ["bank.example"], [], new Date());
  const server = createServer({ cert, key }, (_, answer) => answer.end("hello"));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  const elsewhere = await chromium.launch({
    executablePath: chromiumPath,
    args: [...chromiumSwitches, "--host-resolver-rules=MAP bank.example 127.0.0.1"],
    env: { ...process.env, HOME: home },
  });
  const page = await elsewhere.newPage();
  await expect(page.goto(`https://bank.example:${port}/`)).rejects.toThrow(/ERR_CERT/);
  await elsewhere.close();
  server.close();
});
