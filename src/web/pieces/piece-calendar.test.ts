import ICAL from "ical.js";
import { expect, test } from "vitest";
import { calendarFaults } from "../../core/calendar-file/calendar-faults.ts";
import { bytesOfText } from "../../core/calendar-file/utf8.ts";
import { Pen } from "../../core/demo/pen.ts";
import { type PiecePlanInput, scheduleFromPlan } from "../../core/registry/piece-schedule.ts";
import { pieceView } from "../../core/views/piece.ts";
import { planFrom } from "./draft.ts";
import { pieceCalendar } from "./piece-calendar.ts";

const at = "2026-10-01T18:00:00.000Z";
const input: PiecePlanInput = {
  areaM2: 1.486,
  method: "brush",
  coats: 2,
  cutLbPerGal: 2,
  solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  windows: ["2026-10-24", "2026-10-25", "2026-10-26"].map((day) => [`${day}T18:00`, `${day}T21:00`]),
};

/** A table top in a book, planned; and what its calendar says, read by another author's reader. */
function house() {
  const d = new Pen("a calendar", "Europe/Berlin");
  const area = { typed: "16 sq ft", unit: "ft2", si: 1.486 };
  const piece = d.write(at, "piece-described", { name: "Table; top, oak", area });
  const plan = (given: PiecePlanInput, strikes: string[] = []) => {
    const found = planFrom(given);
    if (!found.ok) throw new Error(found.error.message);
    return d.write(at, "piece-scheduled", scheduleFromPlan(given, found.value, {}), {
      about: [piece],
      strikes,
    });
  };
  const calendar = () => {
    const view = pieceView(d.book, piece);
    if (view?.schedule == null) throw new Error("no plan");
    const text = pieceCalendar(d.book, view, view.schedule, { zone: "Europe/Berlin", stamp: at });
    expect(calendarFaults(bytesOfText(text))).toEqual([]);
    return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent").map((found) => {
      const { uid, summary, description, startDate, sequence } = new ICAL.Event(found);
      const status = found.getFirstPropertyValue("status");
      return { uid, summary, description, start: String(startDate), sequence, status };
    });
  };
  return { piece, plan, calendar };
}

test("an evening tells its steps, with the liquid of each and the cautions", () => {
  const { plan, calendar } = house();
  plan(input);
  const [first, ...others] = calendar();
  expect(first?.summary).toBe("Table; top, oak: sand, coat 1");
  // By hand: 1.486 m² at 114 mL a square metre and 1.2 times for the first coat are 203 mL; 12 minutes a square metre are 18
  // (common practice).
  expect(first?.description).toContain(
    "18:37 Coat 1, brushed, 200 mL of 2 lb, 18 minutes at the bench, then wait 2 h\n",
  );
  expect(first?.description).toContain("Two coats of 2 lb flakes in alcohol, brushed.");
  expect(first?.description).toContain("The supplier’s safety data sheet and local code come first.");
  expect(others.map((e) => [e.summary, e.start])).toEqual([
    ["Table; top, oak: de-nib, coat 2", "2026-10-25T18:00:00"],
    ["Table; top, oak: rub out", "2026-11-08"],
  ]);
});

// By hand: 1.486 m² in halves take 19 minutes a side to sand and 9 to coat: 18:38, and two hours later at 20:47.
test("sides are told step by step, and the heading says each work once", () => {
  const { plan, calendar } = house();
  const half = { share: 0.5 };
  plan({
    ...input,
    surfaces: [
      { ...half, name: "underside" },
      { ...half, name: "top", turned: true },
    ],
  });
  const [first] = calendar();
  expect(first?.summary).toBe("Table; top, oak: sand, coat 1");
  for (const line of [
    "18:19 Sand to 220, wipe off the dust: top, 19 minutes at the bench\n",
    "18:38 Coat 1: underside, brushed, 100 mL of 2 lb, 9 minutes at the bench, then wait 2 h\n",
    "20:47 Coat 1: top, brushed, 100 mL of 2 lb",
  ])
    expect(first?.description).toContain(line);
});

test("a plan written anew moves the same events, and cancels what it has no more", () => {
  const { plan, calendar } = house();
  const kept = plan(input);
  const before = calendar();
  plan({ ...input, coats: 1, windows: [["2026-11-02T18:00", "2026-11-02T21:00"]] }, [kept]);
  const after = calendar();
  expect(new Set(after.map((e) => e.uid))).toEqual(new Set(before.map((e) => e.uid)));
  expect(before.map((e) => [e.sequence, e.status])).toEqual(before.map(() => [0, "CONFIRMED"]));
  expect(after.map((e) => [e.sequence, e.status, e.start])).toEqual([
    [1, "CONFIRMED", "2026-11-02T18:00:00"],
    [1, "CONFIRMED", "2026-11-16"],
    [1, "CANCELLED", "2026-10-25T18:00:00"],
  ]);
});
