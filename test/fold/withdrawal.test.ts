import { expect, test } from "vitest";
import type { KeptEntry } from "../../src/core/notebook/entry.ts";
import { Notebook } from "../../src/core/notebook/notebook.ts";
import { readKeptEntry } from "../../src/core/notebook/parse-entry.ts";
import { sha256OfText } from "../../src/core/notebook/withdrawal.ts";
import { book, idNumbered, keptOf } from "./entries.ts";

const [secret, use, taking, undo] = [1, 2, 3, 4].map(idNumbered) as [string, string, string, string];
const written = keptOf({ id: secret, body: { text: "the client's name" }, aside: "and address" });
const touching = keptOf({ id: use, about: [secret] });
const withdrawal = keptOf({ id: taking, kind: "withdrawn", body: { entries: [secret], why: "asked to" } });

const orders: readonly (readonly KeptEntry[])[] = [
  [written, touching, withdrawal],
  [withdrawal, touching, written],
  [touching, withdrawal, written],
];

test.each(orders)(
  "a withdrawn text is gone in whatever order it comes, and its hash and links stay",
  (...order) => {
    const notebook = new Notebook(book);
    const emptied = order.flatMap((kept) => notebook.add([kept]).emptied);
    const stub = notebook.kept(secret);
    expect(stub?.text).not.toContain("client");
    expect(stub?.text).not.toContain("address");
    expect(stub?.entry).toMatchObject({
      id: secret,
      kind: "note",
      happened: written.entry.happened,
      withdrawn: { sha256: sha256OfText(written.text) },
      body: {},
    });
    expect(emptied).toEqual(order.indexOf(written) < order.indexOf(withdrawal) ? [secret] : []);
    expect(notebook.ordered().map((entry) => entry.id)).toEqual([secret, taking, use]);
    expect(notebook.ofKind("note").map((entry) => entry.id)).toEqual([use]);
    expect(notebook.making(secret)).toBeUndefined();
  },
);

test("a late copy of the full text is recognised and not taken back in; another text is refused", () => {
  const notebook = new Notebook(book);
  notebook.add([written, withdrawal]);
  expect(notebook.add([written])).toMatchObject({ known: [secret], added: [], refused: [] });
  expect(notebook.kept(secret)?.text).not.toContain("client");
  const forged = keptOf({ id: secret, body: { text: "somebody else" } });
  expect(notebook.add([forged]).refused).toMatchObject([{ code: "same-id-other-content" }]);
});

test("a stub goes through a notebook that never saw the text, and takes its place where it is", () => {
  const first = new Notebook(book);
  first.add([written, withdrawal]);
  const text = first.kept(secret)?.text as string;
  const read = readKeptEntry(text);
  if (!read.ok) throw new Error(read.error.message);
  const second = new Notebook(book);
  second.add([read.value]);
  expect(second.kept(secret)?.text).toBe(text);
  const third = new Notebook(book);
  third.add([written]);
  expect(third.add([read.value])).toMatchObject({ emptied: [secret], added: [] });
  expect(third.kept(secret)?.text).toBe(text);
});

test("striking a withdrawal does not bring a text back, and a withdrawal cannot be withdrawn", () => {
  const notebook = new Notebook(book);
  notebook.add([
    keptOf({ id: undo, kind: "struck", strikes: [taking] }),
    keptOf({ id: idNumbered(5), kind: "withdrawn", body: { entries: [taking] } }),
    withdrawal,
    written,
  ]);
  expect(notebook.isLive(taking)).toBe(false);
  expect(notebook.kept(secret)?.entry.withdrawn).toBeDefined();
  expect(notebook.kept(taking)?.text).toBe(withdrawal.text);
});

test("a view that read a text forgets it when it is withdrawn", () => {
  const notebook = new Notebook(book);
  notebook.add([written]);
  const texts = () => notebook.derive("texts", (read) => read.ofKind("note").map((entry) => entry.body.text));
  expect(texts()).toEqual(["the client's name"]);
  notebook.add([withdrawal]);
  expect(texts()).toEqual([]);
});
