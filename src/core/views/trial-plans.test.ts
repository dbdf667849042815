import { expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import { trialPlans } from "./trial-plans.ts";

const at = "2026-10-05T18:00:00.000Z";

test("evenings are counted as they are kept anew and struck out; those of other trials not at all", () => {
  const d = new Pen("plans of a trial", "Europe/Berlin");
  const asked = { varies: [], looksAt: [], coats: 4 };
  const [trial, other] = ["Which?", "Whether?"].map((question) =>
    d.write(at, "trial-asked", { ...asked, question }),
  );
  const evening = (day: string) => ({ from: `${day}T16:00:00.000Z`, until: `${day}T19:00:00.000Z` });
  const keep = (of: string | undefined, days: readonly string[]) =>
    d.write(at, "free-time", { windows: [], evenings: days.map(evening) }, { about: [of ?? ""] });
  const seen = () => {
    const { changes, evenings, now } = trialPlans(d.book.ordered(), trial ?? "");
    return [changes, evenings.map((e) => e.length), now.map((e) => e.from.slice(0, 10))];
  };
  expect(seen()).toEqual([0, [], []]);
  keep(trial, ["2026-10-06", "2026-10-07"]);
  keep(other, ["2026-10-06"]);
  d.write(at, "free-time", { windows: [] });
  expect(seen()).toEqual([0, [2], ["2026-10-06", "2026-10-07"]]);
  const second = keep(trial, ["2026-10-08"]);
  expect(seen()).toEqual([1, [2, 1], ["2026-10-08"]]);
  d.write(at, "struck", {}, { strikes: [second] });
  expect(seen()).toEqual([2, [2, 1], ["2026-10-06", "2026-10-07"]]);
});
