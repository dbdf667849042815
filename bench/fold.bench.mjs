// A notebook of 100 000 entries: from its text to its order, and one more entry, also out of order. The peer parses the same text.
import { splitJsonArray } from "../dist/core/notebook/json-text.js";
import { Notebook } from "../dist/core/notebook/notebook.js";
import { readKeptEntry } from "../dist/core/notebook/parse-entry.js";
import { writeEntry } from "../dist/core/notebook/write-entry.js";
import { randomFromSeed, randomIndex } from "../dist/core/random.js";
import { medianOf } from "./median.mjs";

const count = 100_000;
const notebook = "01a00000-0000-7000-8000-000000000000";
const devices = ["01a00000-0000-7000-8000-00000000000a", "01a00000-0000-7000-8000-00000000000b"];

/** A seeded book of two devices: a jar in 40 entries, a board in 20, else layers (half), looks and readings; 1 in 50 is struck. */
function bookOf(n) {
  const random = randomFromSeed("fold bench");
  const seqs = [0, 0];
  let at = Date.UTC(2026, 0, 1);
  const write = (draft) => {
    const hand = randomIndex(random, 2);
    const effects = {
      now: () => new Date(at).toISOString(),
      randomBytes: (length) => Uint8Array.from({ length }, () => randomIndex(random, 256)),
      zone: "Europe/Berlin",
      device: devices[hand],
      nextSeq: () => ++seqs[hand],
      by: null,
    };
    at += 60_000;
    return writeEntry({ notebook, ...draft }, effects);
  };
  const jars = [];
  const boards = [];
  const all = [];
  const anyOf = (list) => list[randomIndex(random, list.length)];
  const grams = (g) => ({ typed: `${g} g`, unit: "g", si: g / 1000 });
  const next = () => {
    const i = all.length;
    if (i % 40 === 0) {
      const part = { name: "dewaxed lemon flakes", amount: grams(57) };
      return write({
        kind: "batch-mixed",
        body: { code: `J${i}`, resins: [part], solvents: [part], aimedCutLbPerGal: 2 },
      });
    }
    if (i % 20 === 1)
      return write({ kind: "board-cut", body: { name: `B${i}`, wood: "cherry", plank: `P${i % 7}` } });
    if (i % 50 === 2)
      return write({ kind: "struck", strikes: [anyOf(all).entry.id], body: { why: "wrong jar" } });
    const jar = anyOf(jars);
    const board = anyOf(boards);
    if (i % 2 === 0) {
      const layer = {
        sort: "coat",
        targets: [{ board }],
        from: [{ batch: jar }],
        method: "pad",
        planned: { coat: 1 },
      };
      return write({ kind: "layer-applied", about: [board, jar], body: layer });
    }
    if (i % 4 === 1)
      return write({ kind: "batch-looked-at", about: [jar], body: { undissolved: "some", clarity: "hazy" } });
    return write({
      kind: "measured",
      about: [board],
      body: { patch: "p1", response: "gloss", value: grams(41) },
    });
  };
  while (all.length < n) {
    const kept = next();
    all.push(kept);
    if (kept.entry.kind === "batch-mixed") jars.push(kept.entry.id);
    if (kept.entry.kind === "board-cut") boards.push(kept.entry.id);
  }
  return { all, write, anyJar: () => anyOf(jars) };
}

const timed = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};
const median = (rounds, work) => medianOf(rounds, async () => timed(work));

function folded(kept) {
  const book = new Notebook(notebook);
  book.add(kept);
  if (book.ordered().length !== count) throw new Error("the fold lost entries");
  return book;
}

const look = (book, jar) => {
  book.ordered();
  book.ofKind("batch-looked-at");
  return book.touching(jar).length;
};

/** Adds 50 entries to a full notebook one by one, each followed by a look at all, its kind and its jar. */
function oneMore(book, { write, anyJar }, happened) {
  return medianOf(50, () => {
    const jar = anyJar();
    const when = happened === undefined ? {} : { happened };
    const kept = write({ kind: "batch-looked-at", about: [jar], body: { undissolved: "none" }, ...when });
    return timed(() => {
      book.add([kept]);
      look(book, jar);
    });
  });
}

export async function figures() {
  const made = bookOf(count);
  const text = `[${made.all.map((kept) => kept.text).join(",")}]`;
  const fromText = () => folded(splitJsonArray(text).value.map((one) => readKeptEntry(one).value));
  const parse = await median(5, () => JSON.parse(text));
  const peer = { name: `JSON.parse of the same ${(text.length / 1e6).toFixed(0)} MB`, value: parse };
  const book = folded(made.all);
  look(book, made.anyJar());
  const ms = { unit: "ms", peer };
  const atMost = 3 * parse;
  return [
    {
      name: "100 000 entries folded and put in order",
      value: await median(5, () => folded(made.all)),
      atMost,
      ...ms,
    },
    {
      name: "the same from the text, each entry cut out and checked",
      value: await median(5, fromText),
      ...ms,
    },
    { name: "one more entry, median of 50", value: await oneMore(book, made), unit: "ms", atMost: 5 },
    {
      name: "one more entry out of order, median of 50",
      value: await oneMore(book, made, "2026-01-01T12:00:00Z"),
      unit: "ms",
      atMost: 5,
    },
  ];
}
