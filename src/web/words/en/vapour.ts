const names: Readonly<Record<string, string>> = { mek: "MEK", mibk: "MIBK" };

/** What a sitting's alcohol comes to in the air of the room. */
export const vapour = {
  title: "Vapour in the room",
  standing: {
    over: "More vapour than a limit allows",
    fire: "Nearly enough vapour to catch fire",
    under: "Less vapour than the published limits",
  },
  refused: {
    unnamed: "The vapour cannot be reckoned: a part of the liquid has no name",
    outside: "The vapour is reckoned in air of 0 to 40 °C",
  },
  roomAsked: "How large is the room? Typed once, it is kept.",
  amount: "Alcohol in this sitting, mL",
  amountWrong: "1 to 100000 would do.",
  minutes: "Over how many minutes",
  minutesWrong: "1 to 1440 would do.",
  ventilation: (m3: string, changes: string) =>
    `Fresh air to hold it at the limits: ${m3} m³ an hour, ${changes} changes of this room.`,
  ofQuarter: (percent: string) =>
    `At the end of it the air holds ${percent} % of a quarter of what can catch fire; over the work it is more.`,
  quarterFor: (time: string) => `It is above that quarter for ${time}.`,
  quarterWhileClosed: "It is above that quarter for as long as the room stays closed.",
  component: (name: string) =>
    (names[name] ?? name.replaceAll("-", " ")).replace(/^./, (c) => c.toUpperCase()),
  peak: (ppm: string, limit: string) => `${ppm} ppm at the end; limit ${limit} ppm`,
  limitOf: (body: string, year: number, seen: boolean) => `(${body} ${year}${seen ? "" : ", from memory"})`,
  aboveFor: (time: string) => `Above it for ${time}`,
  neverAbove: "Not above it",
  aboveWhileClosed: "Above it for as long as the room stays closed",
  flammable: (percent: string) => `${percent} % of a quarter of its lower flammable limit.`,
  room: "The room",
  roomIs: (m3: string, changes: string) => `The room: ${m3} m³, its air changed ${changes} times an hour`,
  volume: "Size of the room, m³",
  volumeHint: "Length × width × height: 5 × 4 × 2.5 m are 50",
  volumeWrong: "1 to 100000 m³ would do, as 50.",
  changes: "Changes of air an hour",
  changesHint: "A closed room about 0.5, an open window 2 to 5 (from memory)",
  changesWrong: "0 to 100 would do, as 0.5.",
  keepRoom: "Keep this room",
  keptRoom: "The room is written down.",
};
