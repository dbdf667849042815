import { describe, expect, test } from "vitest";
import { demoEntries } from "../../../core/demo/demo.ts";
import { Notebook } from "../../../core/notebook/notebook.ts";
import { jarIds, jarView } from "../../../core/views/jar.ts";
import { cutSheets, papers, perSheet, placeOf, plainSheet, plainSize } from "./formats.ts";
import { labelLayout, smallest } from "./label-layout.ts";
import { labelText } from "./label-text.ts";

const zone = "Europe/Berlin";
const entries = demoEntries({ seed: "1", now: "2026-11-02T09:30:00.000Z", zone });
const book = new Notebook(entries[0]?.entry.notebook ?? "");
book.add(entries);
const texts = jarIds(book)
  .flatMap((id) => jarView(book, id) ?? [])
  .filter((jar) => jar.known)
  .map((jar) => labelText(jar, zone, 180));
const blanks = ["Opened", "Drop test"];

const plain = plainSheet("a4", plainSize.width, plainSize.height);
const sheets = [...cutSheets, ...(plain === undefined ? [] : [plain])];

describe.each(sheets.map((sheet) => [`${sheet.width} × ${sheet.height} mm`, sheet] as const))(
  "labels of %s",
  (_, sheet) => {
    test("lie on the paper, and not on one another", () => {
      const page = papers[sheet.paper];
      const last = placeOf(sheet, perSheet(sheet) - 1);
      expect(sheet.left).toBeGreaterThanOrEqual(0);
      expect(sheet.top).toBeGreaterThanOrEqual(0);
      expect(last.x + sheet.width).toBeLessThanOrEqual(page.width + 1e-9);
      expect(last.y + sheet.height).toBeLessThanOrEqual(page.height + 1e-9);
      expect(sheet.pitch).toBeGreaterThanOrEqual(sheet.width);
    });

    test("say all that a label must, within their edges, in letters that can be read", () => {
      expect(texts.length).toBeGreaterThan(10);
      for (const text of texts) {
        const layout = labelLayout(text, blanks, sheet.width, sheet.height);
        if (layout === undefined) throw new Error(`${text.code} does not fit`);
        const says = layout.texts.map((one) => one.says).join(" | ");
        for (const row of text.rows) expect(says).toContain(row.says);
        for (const blank of blanks) expect(says).toContain(blank);
        expect(says).toContain(text.cutDefined);
        expect(says.replaceAll(" | ", " ")).toContain(text.warning);
        expect(layout.blanks).toHaveLength(2);
        expect(layout.qr.width).toBeGreaterThanOrEqual(12);
        for (const one of layout.texts) {
          expect(one.size).toBeGreaterThanOrEqual(smallest * 0.9);
          expect(one.x).toBeGreaterThanOrEqual(0);
          expect(one.y).toBeLessThanOrEqual(sheet.height);
        }
        expect(layout.qr.y + layout.qr.height).toBeLessThanOrEqual(layout.warning.y + 1e-9);
        expect(layout.warning.y + layout.warning.height).toBeLessThanOrEqual(sheet.height);
      }
    });
  },
);

test("a label that cannot hold it is refused, not cut short", () => {
  expect(labelLayout(texts[0] as never, blanks, 50, 30)).toBeUndefined();
  expect(plainSheet("a4", 250, 85)).toBeUndefined();
});
