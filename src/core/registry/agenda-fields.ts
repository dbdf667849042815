import { z } from "zod";

const minutes = z.int().min(0).max(525_600);
const name = z.string().min(1);
const clock = z.string().describe("a time by the clock of the zone, such as 2026-10-05T18:00");

const task = z.strictObject({
  task: name,
  minutes,
  hands: z.boolean().describe("needs a person, and lies within one window"),
  needs: z.record(z.string(), z.int().min(0)).describe("places taken while it runs").optional(),
  notBefore: clock.optional(),
  jar: z.string().describe("one that must be ready").optional(),
  setup: name.describe("the pad and jar in the hand; without one the hands are bare").optional(),
  round: name
    .describe(
      "boards coated in one round follow each other without a break, in the order given, in one set-up",
    )
    .optional(),
});

const wait = z.strictObject({
  from: name,
  to: name,
  leastMinutes: minutes,
  mostMinutes: minutes.nullish(),
  otherWindow: z
    .boolean()
    .describe("the second is for a later window than the first, whatever the minutes: a night lies between")
    .optional(),
});

const setups = z
  .strictObject({
    anyOther: minutes.describe("minutes from one set-up to another that is not in `between`"),
    between: z.array(z.strictObject({ from: name, to: name, minutes })).optional(),
  })
  .describe(
    "changes of each person, counted by the clock between two tasks: a session begins with the first pad and jar at hand, and after bare hands a set-up takes its longest change",
  );

const replan = z
  .strictObject({
    starts: z.record(z.string(), clock).describe("the old plan"),
    now: clock.describe("no hands-on task that is left starts before it"),
    done: z.record(z.string(), clock).describe("when what is done was really begun").optional(),
    who: z
      .record(z.string(), z.int().min(1))
      .describe(
        "who did what and was to do what, from 1: for several people with set-ups, whose hands may still hold a pad",
      )
      .optional(),
  })
  .describe(
    "as much of an old plan is kept as can be: the finish, or the soonest after it, and then the most starts; of such plans one with the fewest sessions, and then the least idle minutes",
  );

/** An agenda as it is typed: tasks in windows of real time. */
export const agendaFields = {
  tasks: z.array(task).min(1).max(2000),
  waits: z.array(wait).describe("from the end of one task to the start of another, by the clock").optional(),
  capacity: z
    .record(z.string(), z.int().min(0).max(1000))
    .describe("how many there are of each place, and as `person` how many people; one person unless told")
    .optional(),
  windows: z
    .array(z.tuple([clock, clock]))
    .min(1)
    .max(400)
    .describe("when there are hands"),
  zone: z.string().describe("such as Europe/Berlin"),
  jars: z.array(z.strictObject({ jar: z.string(), readyAt: clock })).optional(),
  setups: setups.optional(),
  marginPercent: z
    .number()
    .min(0)
    .max(200)
    .describe("added to every least wait: a coat that dries slowly does not upset the plan")
    .optional(),
  replan: replan.optional(),
} as const;
