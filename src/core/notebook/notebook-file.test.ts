import fc from "fast-check";
import { expect, test } from "vitest";
import { notebookFile, textsInFile } from "./notebook-file.ts";

test("a file holds the exact texts and gives them back", () => {
  const texts = ['{"a": 1.0,"b":"x, ]"}', '{"a":2}'];
  expect(textsInFile(notebookFile(texts))).toEqual({ ok: true, value: texts });
  expect(textsInFile(`${texts[0]}\n${texts[1]}\n`)).toEqual({ ok: true, value: texts });
  expect(textsInFile(notebookFile([]))).toEqual({ ok: true, value: [] });
  expect(textsInFile("a shopping list").ok).toBe(false);
});

test("any entries' texts come back byte for byte", () => {
  fc.assert(
    fc.property(fc.array(fc.dictionary(fc.string(), fc.jsonValue())), (values) => {
      const texts = values.map((value) => JSON.stringify(value));
      expect(textsInFile(notebookFile(texts))).toEqual({ ok: true, value: texts });
    }),
  );
});
