import { whenDue } from "./when-due.ts";

const shortWorks: Readonly<Record<string, string>> = {
  sand: "sand",
  "de-nib": "de-nib",
  level: "level",
  "rub out": "rub out",
  wax: "wax",
};

const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? "") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

const inHours = (minutes: number): string => {
  const [hours, left] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${left} minutes`;
  const whole = hours === 1 ? "one hour" : `${hours} hours`;
  return left === 0 ? whole : `${whole} ${left} minutes`;
};

/** The evenings of a piece: what is on tonight, what moves, what would be sooner. */
export const evenings = {
  short: (what: string, coat: number | undefined) =>
    coat === undefined ? (shortWorks[what] ?? what) : `coat ${coat}`,
  done: "done",
  tonight: "tonight",
  gap: (hours: number) => (hours < 48 ? `${Math.round(hours)} h` : `${Math.round(hours / 24)} d`),
  row: (row: {
    readonly day: string;
    readonly from: string;
    readonly until: string;
    readonly steps: readonly string[];
    readonly state: string;
  }) =>
    `${row.day}, ${row.from} to ${row.until}: ${listed(row.steps)}${row.state === "" ? "" : `; ${row.state}`}`,
  tonightHeading: (day: string) => `Tonight, ${day}`,
  nextHeading: (day: string) => `Next, ${day}`,
  isDone: "done",
  earlier: (coat: string) => `${coat} went on earlier`,
  earlierAct: "Write it down",
  dries: (coat: string, until: string) => `Not before ${until}: ${coat} dries until then.`,
  tooLate: (coat: string, until: string) =>
    `${coat} should have been followed by ${until}. Level it before the next, so that it holds (common practice).`,
  behind: (step: string, when: string) => `${step} was planned for ${when} and is not written down`,
  ahead: (now: string, before: string) =>
    `It goes faster than planned: the rest could end on ${now} instead of ${before}`,
  behindSays: "Plan the rest from now, or write down what was done.",
  carryOn: "Plan the rest from now",
  carriedOn: "The rest is planned anew.",
  ends: (now: string, before: string) =>
    now === before ? `It still ends on ${now}.` : `It ends on ${now} instead of ${before}.`,
  doesNotReach: "The evenings of the plan do not reach for it. Change the plan to add some.",
  move: "Move",
  moveThis: (day: string) => `Move the evening of ${day}`,
  moveTo: "To which day?",
  from: "From",
  until: "Until",
  moveAct: "Move it, the rest follows",
  moved: (day: string) => `The evening of ${day} is moved.`,
  cannotMove: "This evening cannot go there",
  thereAlready: "It is there already: choose another day or hour.",
  passed: "That time has passed. A later one would do.",
  dueLate: (step: string, hour: number, inTime: boolean) => `${step} comes due ${whenDue(hour, inTime)}`,
  dueSays: (due: string, day: string, until: string) =>
    `It may go on from ${due}; the evening of ${day} ends at ${until}.`,
  dueBegin: (at: string) => `Start at ${at} instead, and it goes on that evening too.`,
  beginAt: (at: string) => `Start at ${at}`,
  beginsAt: (day: string, at: string) => `${day} begins at ${at}.`,
  soonerHeading: "Could it be done sooner?",
  soonerEarlier: (minutes: number, day: string) =>
    `Not as the evenings are. Beginning ${inHours(minutes)} earlier each time, it would end on ${day}.`,
  soonerLater: (minutes: number, day: string) =>
    `Not as the evenings are. Going on ${inHours(minutes)} longer each time, it would end on ${day}.`,
  noSooner: "Not by beginning earlier or going on longer by up to three hours: the waits take the days.",
};
