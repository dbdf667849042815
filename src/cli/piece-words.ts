import type { CalendarEvent } from "../core/calendar-file/write-calendar.ts";
import type { ScheduleStep } from "../core/notebook/kinds/pieces.ts";
import { pieceEvents } from "../core/pieces/piece-events.ts";
import { plannedEvenings } from "../core/pieces/planned-evenings.ts";
import { formatNumber, formatQuantity } from "../core/quantity/format-quantity.ts";
import type { PiecePlanOutput } from "../core/registry/piece-schedule.ts";
import type { ShopClock } from "../core/schedule/shop-clock.ts";
import { dayWords, headingWords, hourWords, lengthWords, provenWords } from "./session-words.ts";
import { benchCaution, tableText } from "./shop-words.ts";

type Steps = readonly ScheduleStep[];

const works: Readonly<Record<string, string>> = {
  sand: "sand to 220, wipe off the dust",
  "de-nib": "de-nib lightly with 320",
  level: "level with 320 to 400",
  "spirit-off": "clear the oil, with a pad nearly dry of alcohol",
  wax: "wax thinly, buff",
};
const roles: Readonly<Record<string, string>> = { seal: ", to seal", body: "", tint: ", for the colour" };
const done: Readonly<Record<string, string>> = { pad: "padded", brush: "brushed", spray: "sprayed" };

/** Nobody plans a jar closer than three figures. */
const three = { significantDigits: 3 } as const;
const millilitres = (ml: number): string => formatQuantity(ml / 1e6, "ml", three);
const grams = (g: number): string => formatQuantity(g / 1e3, "g", three);
const cutWords = (cut: number): string => `${Number(cut.toPrecision(3))} lb`;

function nameOf(step: ScheduleStep, coat: number | undefined): string {
  const name =
    coat === undefined ? (works[step.what] ?? step.what) : `coat ${coat}${roles[step.as ?? "body"]}`;
  return step.surface === undefined ? name : `${step.surface}: ${name}`;
}

const shortName = ({ what }: ScheduleStep): string => (what === "spirit-off" ? "clear the oil" : what);

/** `brushed`, `203 ml of 2 lb`, `18 min`, `then wait 2 h`. */
function told(step: ScheduleStep): string[] {
  const { method, millilitres: ml = 0, cutLbPerGal, minutes = 0, leastWaitMinutes: least = 0 } = step;
  const most =
    step.mostWaitMinutes === undefined ? "" : `, no longer than ${lengthWords(step.mostWaitMinutes)}`;
  return [
    ...(method === undefined ? [] : [done[method] ?? method]),
    ...(ml > 0 && cutLbPerGal !== undefined ? [`${millilitres(ml)} of ${cutWords(cutLbPerGal)}`] : []),
    ...(minutes > 0 ? [lengthWords(minutes)] : []),
    ...(least > 0 ? [`then wait ${lengthWords(least)}${most}`] : []),
  ];
}

const mixRows = ({ mixes, dryUm }: PiecePlanOutput): string =>
  tableText([
    ...mixes.map((mix) => [
      "mix",
      `${millilitres(mix.solutionMl)} of ${cutWords(mix.cutLbPerGal)}`,
      `${grams(mix.resinG)} of flakes in ${millilitres(mix.solventMl)} of alcohol, ${grams(mix.solventG)} on the scale`,
    ]),
    ["film", `${formatNumber(dryUm, 2)} µm dry at the end`],
  ]);

function eveningBlocks(steps: Steps, clock: ShopClock): string[] {
  return plannedEvenings(steps, clock).map((evening) => {
    const [from, until] = [clock.clock(evening.from), clock.clock(evening.until)];
    const rows = evening.steps.map(({ step, coat, from: at }) => [
      `  ${hourWords(clock.clock(at))}`,
      [nameOf(step, coat), ...told(step)].join(", "),
    ]);
    return `${dayWords(from)}, ${hourWords(from)} to ${hourWords(until)}\n${tableText(rows)}`;
  });
}

/** What has a day and no hour, and how much has no day. */
function otherLines(steps: Steps, unplaced: number): string[] {
  const days = steps.flatMap((step) =>
    step.day === undefined || step.at !== undefined || (step.minutes ?? 0) === 0
      ? []
      : [`From ${dayWords(step.day)}: ${[nameOf(step, undefined), ...told(step)].join(", ")}\n`],
  );
  const none =
    unplaced === 0
      ? []
      : [
          `${unplaced === 1 ? "One step has" : `${unplaced} steps have`} no evening that is long enough; longer evenings would do, or a smaller part at a time.\n`,
        ];
  return [days.join(""), ...none].filter((block) => block !== "");
}

/** A piece's plan: what to mix, each evening, and what comes after. */
export function pieceInWords(
  found: PiecePlanOutput,
  steps: Steps,
  clock: ShopClock,
  notes: readonly string[],
): string {
  const under = [
    ...(found.provenBest === null ? [] : [provenWords[found.provenBest]]),
    ...notes,
    ...found.flags.map((f) => f.message),
    "Amounts, waits and minutes are common practice unless told.",
    benchCaution,
  ];
  return [
    mixRows(found),
    ...eveningBlocks(steps, clock),
    ...otherLines(steps, found.unplacedSteps),
    under.map((line) => `${line}\n`).join(""),
  ].join("\n");
}

/** The same as events of a calendar. */
export function pieceEventsInWords(
  id: string,
  name: string,
  steps: Steps,
  clock: ShopClock,
): CalendarEvent[] {
  const below = (lines: readonly string[]) => [...lines, "", benchCaution].join("\n");
  return pieceEvents(id, steps, clock, {
    evening: (evening) => ({
      summary: headingWords(
        name,
        evening.steps.map(({ step, coat }) => (coat === undefined ? shortName(step) : `coat ${coat}`)),
      ),
      description: below(
        evening.steps.map(({ step, coat, from }) =>
          [`${hourWords(clock.clock(from))} ${nameOf(step, coat)}`, ...told(step)].join(", "),
        ),
      ),
    }),
    day: (step) => ({
      summary: headingWords(name, [shortName(step)]),
      description: below([[nameOf(step, undefined), ...told(step)].join(", ")]),
    }),
  });
}
