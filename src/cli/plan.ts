import type { z } from "zod";
import type { CalendarEvent } from "../core/calendar-file/write-calendar.ts";
import type { AgendaInput } from "../core/registry/agenda-input.ts";
import { agendaSessions, type PlacedTask, type SessionsOfAgenda } from "../core/registry/agenda-sessions.ts";
import { calculate } from "../core/registry/calculation.ts";
import { readJson } from "../core/registry/read-json.ts";
import { schedule } from "../core/registry/schedule.ts";
import { type ShopClock, shopClock } from "../core/schedule/shop-clock.ts";
import { calendarOptions, idOfName, writeCalendar } from "./calendar-option.ts";
import { CliError, refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { dayWords, headingWords, hourWords, lengthWords, provenWords } from "./session-words.ts";
import { benchCaution, tableText } from "./shop-words.ts";
import { nowOf } from "./when-options.ts";

type Found = z.output<typeof schedule.output>;

export const command = defineCommand({
  usage: "plan [AGENDA.json]",
  positionals: 1,
  options: {
    name: {
      type: "string",
      value: "TEXT",
      description: "what it is called in the calendar; the file's own name unless told",
    },
    ...calendarOptions,
  },
  async run({ values, positionals }, effects) {
    const [file] = positionals;
    const text = file === undefined ? await effects.stdin() : effects.readFile(file);
    const { given, found } = planned(text);
    const sessions = found.starts === null ? undefined : agendaSessions(given, found.starts);
    if (values.json === true) effects.stdout(`${JSON.stringify(found, null, 2)}\n`);
    else if (sessions !== undefined) effects.stdout(inWords(found, sessions, shopClock(given.zone)));
    if (sessions === undefined) {
      if (values.json === true && values.calendar === undefined) return;
      throw new CliError(found.whyNot?.message ?? "No plan was found.");
    }
    if (values.calendar === undefined) return;
    const name = values.name ?? file?.replace(/^.*[\\/]/, "").replace(/\.json$/i, "") ?? "Bench";
    const events = eventsOf(name, sessions, shopClock(given.zone));
    writeCalendar({ path: values.calendar, zone: given.zone, stamp: nowOf(values.now), events }, effects);
  },
});

/** An agenda and its plan; what else the calculation takes has no clock. */
function planned(text: string): { readonly given: AgendaInput; readonly found: Found } {
  const input = readJson(text);
  if (!input.ok) throw refused(input.error);
  const read = schedule.input.safeParse(input.value);
  if (read.success && "instance" in read.data) throw notAnAgenda();
  const answer = calculate(schedule, input.value);
  if (!answer.ok) throw refused(answer.error);
  return { given: read.data as AgendaInput, found: answer.value as Found }; // read, or the calculation had refused it
}

const notAnAgenda = () =>
  refused({
    code: "contradiction",
    field: "instance",
    message:
      "An instance has no evenings: an agenda with tasks, windows and a zone would do. lacbench calc schedule takes an instance.",
    value: null,
    limits: null,
  });

const taskRow = (clock: ShopClock, { who }: Found, { task, from, until }: PlacedTask): string[] => [
  `  ${hourWords(clock.clock(from))}`,
  task,
  lengthWords(until - from),
  ...(who?.[task] === undefined ? [] : [`person ${who[task]}`]),
];

function inWords(found: Found, { sessions, byThemselves }: SessionsOfAgenda, clock: ShopClock): string {
  const hour = (minutes: number): string => hourWords(clock.clock(minutes));
  const blocks = sessions.map(
    ({ from, until, tasks }) =>
      `${dayWords(clock.clock(from))}, ${hour(from)} to ${hour(until)}\n${tableText(tasks.map((task) => taskRow(clock, found, task)))}`,
  );
  const alone = byThemselves.map(({ task, from, until }) => [
    `  ${dayWords(clock.clock(from))} ${hour(from)}`,
    task,
    `until ${dayWords(clock.clock(until))} ${hour(until)}`,
  ]);
  return [
    ...blocks,
    ...(alone.length === 0 ? [] : [`By themselves\n${tableText(alone)}`]),
    ...movedWords(found),
    `${doneWords(found)}\n${benchCaution}\n`,
  ].join("\n");
}

/** What a re-plan moved of what was planned before. */
const movedWords = ({ moved }: Found): string[] =>
  moved === undefined ? [] : [moved.length === 0 ? "Nothing moved.\n" : `Moved: ${moved.join(", ")}.\n`];

/** When it is done, and what is known of whether that could be bettered. */
function doneWords({ finish, sessions, idleMinutes, lowerBound, provenBest }: Found): string {
  const waiting = idleMinutes ? `with ${lengthWords(idleMinutes)} of waiting there` : "with no waiting there";
  const done = `Done ${dayWords(String(finish))} ${hourWords(String(finish))}, in ${sessions} ${sessions === 1 ? "session" : "sessions"} at the bench, ${waiting}.`;
  const bound = `${dayWords(String(lowerBound))} ${hourWords(String(lowerBound))}`;
  const known =
    provenBest === null
      ? `Whether one is done sooner is not settled; none is before ${bound}.`
      : provenWords[provenBest];
  return `${done} ${known}`;
}

function eventsOf(name: string, { sessions }: SessionsOfAgenda, clock: ShopClock): CalendarEvent[] {
  const id = idOfName("plan", name);
  return sessions.map(({ from, until, tasks }, i) => ({
    uid: `${id}-session-${i + 1}`,
    time: { from, until },
    summary: headingWords(
      name,
      tasks.map(({ task }) => task),
    ),
    description: [
      ...tasks.map(
        (task) => `${hourWords(clock.clock(task.from))} ${task.task}, ${lengthWords(task.until - task.from)}`,
      ),
      "",
      benchCaution,
    ].join("\n"),
  }));
}
