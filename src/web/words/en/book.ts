import { counted } from "../counted.ts";

export const book = {
  title: "Book",
  says: "Every entry in order, the newest first. Nothing is overwritten: tap one to strike it out.",
  empty: "Nothing is written yet",
  emptySays:
    "What is mixed, looked at, coated and judged is written here by itself. A note can be written now.",
  noneFound: "No entry says that",
  search: "Look for words",
  thing: "Only about",
  everything: "everything",
  sorts: { jar: "jar", shelf: "on the shelf", trial: "trial", piece: "piece", board: "board" },
  thingOption: (name: string, sort: string) => `${name} (${sort})`,
  found: (shown: number, all: number) => (shown === all ? `${all} entries` : `${shown} of ${all} entries`),
  earlier: (n: number) => `Show ${n} earlier ones`,
  strike: "Strike out",
  restore: "Bring back",
  strikeThis: (says: string) => `Strike out: ${says}`,
  restoreThis: (says: string) => `Bring back: ${says}`,
  justWritten: "Written in the book.",
  struckOut: (struck: readonly string[], why: string | undefined) => {
    const what =
      struck.length === 1
        ? `struck out: “${struck[0]}”`
        : `${counted(struck.length)} entries struck out: ${struck.map((s) => `“${s}”`).join(" ")}`;
    const said = why === undefined ? what : `${what} Because ${why}.`;
    return said.charAt(0).toUpperCase() + said.slice(1);
  },
  aStrike: "a striking-out",
  withdrawn: "Withdrawn: what it said is gone for good; that it was written stays.",
  notUnderstood: (kind: string) =>
    `An entry of a kind that this version does not know (${kind}). It is kept as it is.`,
  unusable: (why: string) => `An entry that cannot be used: ${why} It is kept as it is.`,
  later: "(written down later)",
  remembered: "(remembered)",
  writtenOn: (when: string, by: string | null, device: string, seq: number) =>
    `Written down ${when}${by === null ? "" : ` by ${by}`}, on the device ${device}, its entry number ${seq}.`,
  sometime: "time not known",
  about: (hour: string) => `about ${hour}`,
  note: "Write a note",
  noteText: "The note",
  noteHint: "What you would pencil in the margin.",
  noteMissing: "The note has no words yet. “The stove was out” would do.",
  noteAct: "Put it in the book",
  sort: "What is it?",
  sorting: {
    note: "A note",
    decision: "A decision",
    spill: "A spill",
    dust: "Dust",
    insect: "An insect",
    "power cut": "Power cut",
    draught: "A draught",
    other: "Something else happened",
  },
  aboutThing: "About",
  nothingInParticular: "nothing in particular",
  files: "The whole book as a file",
  filesSay:
    "All entries, each exactly as it was written. Another browser or another machine can take the file in; what it has already counts once.",
  save: "Save all entries",
  takeIn: "Take a file in",
  tookIn: (added: number, known: number) =>
    `${added === 0 ? "Nothing new" : added === 1 ? "One new entry" : `${added} new entries`}; ${known === 0 ? "none" : known} ${known === 1 ? "was" : "were"} here already.`,
  notTaken: (n: number) => (n === 1 ? "One was not taken in:" : `${n} were not taken in:`),
  unreadable: "This file is not a list of entries",
  unreadableSays: (why: string) => `${why} A file saved from the Book would do. Nothing was changed.`,
  refused: "Not taken in by the house",
  refusedSays:
    "They are kept here, and count on this device. Strike out what did not happen; what did can be sent again.",
  sendAgain: "Send it again",
  reports: "What to know of this book",
  report: {
    gap: (device: string, n: number) =>
      `${n === 1 ? "One entry" : `${n} entries`} of another device (${device}) ${n === 1 ? "has" : "have"} not come yet, or ${n === 1 ? "is" : "are"} lost.`,
    sameNumber: "Two entries of one device have the same number. Both are kept.",
    ring: "Some entries strike one another in a ring. All of them count.",
    linkRing: "Some entries are each about the other. They stand in the order of their ids.",
  },
};
