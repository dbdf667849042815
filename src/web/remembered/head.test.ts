import { expect, test } from "vitest";
import { calendarDay } from "../../core/pieces/calendar-day.ts";
import { zoneOffset } from "../words/zone-offset.ts";
import { blankHead, type HeadDraft, headFits, readHead, writeHead } from "./head.ts";

const at = (time: string) => `2026-10-14T${time}:00.000Z`;
const shop = {
  now: "2026-10-15T06:00:00.000Z",
  offset: (instant: string) => zoneOffset(instant, "Europe/Berlin"),
  laidOutAt: "2026-10-10T08:00:00.000Z",
};
const read = (draft: Partial<HeadDraft>) =>
  readHead({ ...blankHead, ...draft }, calendarDay("2026-10-14"), shop);
function written(draft: Partial<HeadDraft>, first?: Parameters<typeof writeHead>[1]) {
  const drafts: { readonly kind: string; readonly happened?: string; readonly body: object }[] = [];
  writeHead(read(draft), first, ((one: (typeof drafts)[number]) => `id-${drafts.push(one)}`) as never);
  return drafts;
}

test("an empty head fits and writes nothing", () => {
  expect(headFits(read({}))).toBe(true);
  expect(written({})).toEqual([]);
});

// Berlin is UTC+2 on 14 October 2026 (EU summer time rule).
test("the air is of the beginning, or of the first line that has a time; the sitting needs both its ends", () => {
  const both = written({ air: "14", damp: "68", began: "1930", ended: "22:15" });
  expect(both).toMatchObject([
    { kind: "air-read", happened: at("17:30"), body: { temperature: { si: 287.15 } } },
    { kind: "sitting-begun", happened: at("17:30") },
    { kind: "sitting-ended", happened: at("20:15"), body: { minutes: 165 } },
  ]);
  const line = { at: at("18:00"), known: "hour" } as const;
  expect(written({ air: "14", damp: "68" }, line)).toMatchObject([
    { kind: "air-read", happened: at("18:00"), happenedKnownTo: "hour" },
  ]);
  expect(written({ began: "19:30" }, line)).toEqual([]);
});

test("what does not fit: half of the air, no time of day, an end alone or before the beginning", () => {
  expect(headFits(read({ air: "14" }))).toBe(false);
  expect(headFits(read({ air: "14", damp: "680" }))).toBe(false);
  expect(read({ began: "late" }).faults.began).toEqual({ code: "not-a-time", typed: "late" });
  expect(read({ ended: "22:00" }).faults.ended).toEqual({ code: "no-beginning" });
  expect(read({ began: "22:00", ended: "21:00" }).faults.ended).toEqual({
    code: "too-early",
    after: at("20:00"),
  });
});
