import { createHash } from "node:crypto";
import type { Page } from "playwright-core";
import { splitJsonArray } from "../../src/core/notebook/json-text.ts";

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

export interface Hashed {
  readonly count: number;
  /** Of the texts in the order of their hashes: equal for equal sets, whatever the order they came in. */
  readonly hash: string;
}

const hashed = (texts: readonly string[]): Hashed => ({
  count: texts.length,
  hash: sha256(texts.map(sha256).sort().join("\n")),
});

/** Every text that the browser keeps of the notebook, read from its database past the program. */
export async function keptHere(page: Page): Promise<Hashed & { readonly seqs: readonly number[] }> {
  const texts = await page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const open = indexedDB.open("lacbench");
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const all = open.result.transaction("rows").objectStore("rows").getAll();
          all.onerror = () => reject(all.error);
          all.onsuccess = () => {
            open.result.close();
            resolve(all.result.map((row: { text: string }) => row.text));
          };
        };
      }),
  );
  return { ...hashed(texts), seqs: texts.map((text) => JSON.parse(text).seq) };
}

/** Every text that the house gives out of its only notebook. */
export async function keptInHouse(address: string): Promise<Hashed> {
  const { notebooks } = await (await fetch(`${address}/api/notebooks`)).json();
  const answer = await fetch(`${address}/api/notebooks/${notebooks[0].id}/entries?limit=5000`);
  const text = await answer.text();
  const texts = splitJsonArray(text.slice('{"entries":'.length, text.lastIndexOf(',"cursor"')));
  if (!texts.ok) throw new Error(texts.error.message);
  return hashed(texts.value);
}

/** Writes notes through the Book's own form, as fast as the page takes them. */
export async function writeNotes(page: Page, texts: readonly string[]): Promise<void> {
  await page.getByText("Write a note", { exact: true }).first().waitFor();
  await page.evaluate(async (all) => {
    const form = [...document.querySelectorAll("details")].find((d) =>
      /Write a note/.test(d.textContent ?? ""),
    );
    if (form !== undefined) form.open = true;
    const field = document.querySelector<HTMLInputElement | HTMLTextAreaElement>(
      ".book .note textarea, .book .note input",
    );
    const act = [...document.querySelectorAll<HTMLButtonElement>(".book .note button")].find((b) =>
      /Put it in the book/.test(b.textContent ?? ""),
    );
    if (field === null || act === undefined) throw new Error("There is no form for notes here.");
    for (const text of all) {
      field.value = text;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      act.click();
      await Promise.resolve();
    }
  }, texts);
}

/** An entry as the house gives it, as far as tests look at it. */
export interface ToldEntry {
  readonly id: string;
  readonly kind: string;
  readonly happened: string;
  readonly happenedKnownTo: string;
  readonly remembered?: boolean;
  readonly by: string | null;
  readonly for?: readonly string[];
  readonly body: {
    readonly targets?: readonly { readonly patch: string }[];
    readonly from?: readonly { readonly batch?: string }[];
    readonly planned?: { readonly coat: number };
  };
}

/** Every entry of the house's only notebook. */
export async function entriesIn(address: string): Promise<readonly ToldEntry[]> {
  const { notebooks } = await (await fetch(`${address}/api/notebooks`)).json();
  const answer = await fetch(`${address}/api/notebooks/${notebooks[0].id}/entries?limit=5000`);
  return (await answer.json()).entries;
}
