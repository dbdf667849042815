import { expect, test } from "vitest";
import { notebookFile, textsInFile } from "./notebook-file.ts";
import { notebookInFile } from "./notebook-in-file.ts";
import { partsOfFile, photographText, sha256OfBytes } from "./photographs-in-file.ts";
import { writeEntry } from "./write-entry.ts";

const bytes = Uint8Array.from({ length: 1000 }, (_, i) => (i * 37) % 256);
const photograph = { sha256: sha256OfBytes(bytes), type: "image/jpeg", bytes };
const notebook = "018f0000-0000-7000-8000-000000000001";

/** A notebook with a jar's photograph, of which `note` tells what it shows. */
function texts(note: string): readonly string[] {
  let seq = 0;
  const effects = {
    now: () => "2026-10-05T18:00:00Z",
    randomBytes: (length: number) => new Uint8Array(length).fill(seq),
    zone: "Europe/Berlin",
    device: "018f0000-0000-7000-8000-0000000000d1",
    nextSeq: () => ++seq,
    by: null,
  };
  const { sha256, type } = photograph;
  const body = { sha256, type, bytes: bytes.length, note };
  return [
    writeEntry({ notebook, kind: "notebook-begun", body: { name: "Bench book" } }, effects).text,
    writeEntry({ notebook, kind: "photograph", body }, effects).text,
  ];
}

// FIPS 180-4 test vectors, as NIST's examples for SHA-256 print them: "abc", and the message of 448 bits.
test.each([
  ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
  [
    "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
    "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
  ],
])("SHA-256 of %j is as NIST prints it", (message, digest) => {
  expect(sha256OfBytes(new TextEncoder().encode(message))).toBe(digest);
});

test("entries and photographs come back as they went in", () => {
  const written = texts("haze after coat 3");
  const file = notebookFile([...written, photographText(photograph)]);
  expect(partsOfFile(file)).toEqual({
    ok: true,
    value: { texts: written, photographs: [photograph], spoiled: [] },
  });
  const read = notebookInFile(file);
  expect(read).toMatchObject({ ok: true, value: { refused: [], lacking: [], photographs: [photograph] } });
  // A reader that knows no photographs finds one element more, and the entries as they were.
  expect(textsInFile(file)).toMatchObject({ value: [...written, photographText(photograph)] });
});

test("a photograph with one byte changed is named, and not taken", () => {
  const spoiled = photographText({
    ...photograph,
    bytes: bytes.map((byte, i) => (i === 500 ? byte ^ 1 : byte)),
  });
  const file = notebookFile([...texts("haze"), spoiled]);
  expect(notebookInFile(file)).toMatchObject({
    ok: true,
    value: {
      refused: [],
      photographs: [],
      lacking: [{ sha256: photograph.sha256, note: "haze", happened: "2026-10-05T18:00:00Z", spoiled: true }],
    },
  });
  expect(partsOfFile(notebookFile([spoiled, photographText(photograph)]))).toMatchObject({
    value: { photographs: [photograph], spoiled: [] },
  });
});

test("a photograph that is not in the file is named; a file without any opens as before", () => {
  expect(notebookInFile(notebookFile(texts("haze")))).toMatchObject({
    ok: true,
    value: { photographs: [], lacking: [{ note: "haze", spoiled: false }] },
  });
  expect(notebookInFile(notebookFile(texts("haze").slice(0, 1)))).toMatchObject({
    value: { photographs: [], lacking: [] },
  });
});

test.each([
  ["no picture's type", { ...JSON.parse(photographText(photograph)), type: "text/html" }],
  ["no base64", { ...JSON.parse(photographText(photograph)), base64: "£" }],
  ["no bytes", { photograph: photograph.sha256, type: "image/jpeg" }],
])("%s is spoiled", (_, element) => {
  expect(partsOfFile(notebookFile([JSON.stringify(element)]))).toMatchObject({
    value: { texts: [], photographs: [], spoiled: [photograph.sha256] },
  });
});

test("an entry with a field of that name stays an entry", () => {
  const entry = (texts("x")[0] as string).replace("{", '{"photograph":"of a later version",');
  expect(partsOfFile(notebookFile([entry]))).toMatchObject({ value: { texts: [entry], photographs: [] } });
});
