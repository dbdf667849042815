import { expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import { whoDid } from "./who-did.ts";
import { asItHappened } from "./write-entry.ts";

const at = "2026-10-14T17:30:00.000Z";
const entryBy = (by: string | null, hands?: readonly string[]) => {
  const pen = new Pen("who", "Europe/Berlin", by);
  const id = pen.write(at, "note", { text: "wiped" }, hands === undefined ? {} : { for: hands });
  const entry = pen.book.entry(id);
  if (entry === undefined) throw new Error("it was written");
  return entry;
};

test("whose hands it was: those named, else whoever wrote; a correction by somebody else leaves it so", () => {
  expect(whoDid(entryBy("Ada"))).toBe("Ada");
  expect(whoDid(entryBy("Ada", ["Cleo", "Ben"]))).toBe("Cleo, Ben");
  expect(whoDid(entryBy(null))).toBeNull();
  const corrected = { ...entryBy("Ben"), ...asItHappened(entryBy("Ada")) };
  expect(whoDid(corrected)).toBe("Ada");
  expect(asItHappened(entryBy(null))).not.toHaveProperty("for");
});
