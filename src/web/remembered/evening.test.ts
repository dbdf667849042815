import { expect, test } from "vitest";
import { calendarDay } from "../../core/pieces/calendar-day.ts";
import { zoneOffset } from "../words/zone-offset.ts";
import { writeEvening } from "./entries.ts";
import { blankLine, type LineDraft, readEvening, type Source } from "./evening.ts";
import { dayChosen } from "./evening-time.ts";
import type { SheetLine } from "./sheet.ts";

const line = (number: number, code: string, more: Partial<SheetLine> = {}): SheetLine => ({
  ...{
    key: `${more.coat ?? 3}/${code}`,
    number,
    coat: 3,
    patch: `p-${code}`,
    code,
    board: "cherry 1",
    place: number,
  },
  ...{ boardId: "board-1", batch: null, coats: 2, lastAt: "2026-10-13T17:00:00.000Z", state: "waits" },
  ...more,
});
type Filled = readonly [SheetLine, Partial<LineDraft>?];
const read = (
  source: Source,
  sheets: readonly (readonly Filled[])[],
  now = "2026-10-15T06:00:00.000Z",
  began?: string,
) =>
  readEvening(
    {
      day: calendarDay("2026-10-14"),
      source,
      method: "pad",
      sheets: sheets.map((sheet) => ({
        began,
        lines: sheet.map(([line, draft]) => ({ line, draft: { ...blankLine, ...draft } })),
      })),
    },
    { now, offset: (at) => zoneOffset(at, "Europe/Berlin"), laidOutAt: "2026-10-10T08:00:00.000Z" },
  );
const said = (all: ReturnType<typeof read>) => all.on.map((one) => [one.line.code, one.at, one.known]);
const at = (time: string, day = "14") => `2026-10-${day}T${time}:00.000Z`;

// Berlin is UTC+2 on 14 October 2026 (EU summer time rule).
test("down the sheet: a line without a time has that of the line above; small hours are of the night after", () => {
  const all = read("sheet", [
    [[line(1, "K7"), { time: "1934" }], [line(2, "R4")], [line(3, "T2"), { time: "0.20" }], [line(4, "N3")]],
  ]);
  expect(said(all)).toEqual([
    ["K7", at("17:34"), "minute"],
    ["R4", at("17:34"), "minute"],
    ["T2", at("22:20"), "minute"],
    ["N3", at("22:20"), "minute"],
  ]);
});

test("a sheet without a time at its head says only the day; from memory a time is asked for", () => {
  expect(said(read("sheet", [[[line(1, "K7")], [line(2, "R4"), { time: "20:10" }]]]))).toEqual([
    ["K7", at("10:00"), "day"],
    ["R4", at("18:10"), "minute"],
  ]);
  expect([...read("about", [[[line(1, "K7")]]]).faults]).toEqual([["3/K7", { code: "no-time" }]]);
  expect(said(read("about", [[[line(1, "K7"), { time: "20:10" }]]]))).toEqual([["K7", at("18:10"), "hour"]]);
  expect(said(read("day", [[[line(1, "K7")]]]))).toEqual([["K7", at("10:00"), "day"]]);
});

test("lines without any time went on about when the sheet was begun", () => {
  const all = read("sheet", [[[line(1, "K7")], [line(2, "R4"), { time: "20:10" }]]], undefined, "19:30");
  expect(said(all)).toEqual([
    ["K7", at("17:30"), "hour"],
    ["R4", at("18:10"), "minute"],
  ]);
});

test("what does not fit is told by its line: no time of day, still to come, before the coat beneath, a coat missing", () => {
  const faults = (filled: Filled, now?: string) => [...read("exact", [[filled]], now).faults.values()];
  expect(faults([line(1, "K7"), { time: "soon" }])).toEqual([{ code: "not-a-time", typed: "soon" }]);
  expect(faults([line(1, "K7"), { time: "21:00" }], at("18:00"))).toEqual([
    { code: "ahead", at: at("19:00") },
  ]);
  expect(faults([line(1, "K7", { lastAt: at("16:00") }), { time: "17:30" }])).toEqual([
    { code: "too-early", after: at("16:00") },
  ]);
  expect(faults([line(1, "K7", { coats: 1 }), { time: "17:30" }])).toEqual([
    { code: "coat-before", coat: 2 },
  ]);
});

test("two coats of one evening follow one another; a day without an hour is placed after what came before it", () => {
  const all = read("day", [
    [[line(1, "K7", { lastAt: at("16:00") })]],
    [[line(1, "K7", { coat: 4, key: "4/K7", lastAt: at("16:00") })]],
  ]);
  expect(said(all)).toEqual([
    ["K7", at("16:01"), "day"],
    ["K7", at("16:02"), "day"],
  ]);
  const early = read("day", [[[line(1, "K7", { lastAt: "2026-10-15T05:00:00.000Z" })]]]);
  expect([...early.faults.values()][0]?.code).toBe("too-early");
});

test("what is written: one coat a run of like lines, left-out lines with why, all marked as they are known", () => {
  const all = read("exact", [
    [
      [line(1, "K7", { batch: "jar-1" }), { time: "19:30", note: "a run" }],
      [line(2, "R4", { batch: "jar-1" })],
      [line(3, "T2", { batch: "jar-1" }), { batch: "jar-2" }],
      [line(4, "N3", { state: "written" })],
      [line(5, "B4"), { on: false, why: "dropped", note: "off the bench" }],
      [line(6, "C5"), { on: false, note: "still wet" }],
    ],
  ]);
  const drafts: { kind: string; body: unknown; remembered?: boolean; happened?: string }[] = [];
  const write = (draft: (typeof drafts)[number]) => `id-${drafts.push(draft)}`;
  const how = { trial: "trial-1", keyOpen: true, source: "exact", method: "pad" } as const;
  const said = {
    sayLeftOut: () => "Coat 3 left out on C5: still wet",
    sayRemark: () => "Coat 3 on K7: a run",
  };
  const ids = writeEvening(all, { ...how, ...said }, write as never);
  expect(ids).toEqual(["id-1", "id-2", "id-3", "id-4"]);
  expect(drafts.map((d) => [d.kind, d.remembered])).toEqual([
    ["layer-applied", true],
    ["layer-applied", true],
    ["patch-left-out", true],
    ["note", true],
  ]);
  expect(drafts[0]?.body).toMatchObject({
    targets: [{ patch: "p-K7" }, { patch: "p-R4" }],
    from: [{ batch: "jar-1" }],
    planned: { coat: 3 },
  });
  expect(drafts[1]?.body).toMatchObject({ targets: [{ patch: "p-T2" }], from: [{ batch: "jar-2" }] });
  expect(drafts[2]?.body).toEqual({ patch: "p-B4", why: "dropped", note: "off the bench", keyOpen: true });
  const shut: typeof drafts = [];
  writeEvening(
    all,
    { ...how, keyOpen: false, source: "sheet", ...said },
    ((d: (typeof shut)[number]) => `id-${shut.push(d)}`) as never,
  );
  expect(JSON.stringify(shut)).not.toContain("jar-"); // a jar beside a patch would give its code away
  expect(shut[0]?.remembered).toBeUndefined();
  expect(shut.at(-1)).toMatchObject({ kind: "note", body: { text: "Coat 3 on K7: a run" } }); // paper has a column for it
});

test("the day that is meant", () => {
  expect(dayChosen("today", "", "2026-10-15")).toBe("2026-10-15");
  expect(dayChosen("yesterday", "", "2026-11-01")).toBe("2026-10-31");
  expect(dayChosen("other", "2026-10-02", "2026-10-15")).toBe("2026-10-02");
  expect(dayChosen("other", "2026-10-16", "2026-10-15")).toBeUndefined();
  expect(dayChosen("other", "", "2026-10-15")).toBeUndefined();
});
