import { counted } from "../counted.ts";

/** The file that a person keeps of a notebook. */
export const ownFile = {
  saved: {
    again: "Saved into your file.",
    chosen: "Saved. The next time it goes into the same file.",
    downloaded: "Saved: look among what the browser downloaded, and keep the newest.",
    left: "Nothing was saved.",
  },
  notSaved: "The file could not be written",
  notSavedSays: (why: string) => `The browser says: ${why} Nothing is lost here; another folder may do.`,
  openHeading: "A file saved from Lacbench",
  openSays: "It is looked through first; what is here already counts once.",
  open: "Open a file",
  unreadable: "This file cannot be opened",
  unreadableSays: (why: string) => `${why} A file saved from the Book would do. Nothing was changed.`,
  found: (name: string, n: number) =>
    `${name === "" ? "A notebook without a name" : `“${name}”`}, ${n === 1 ? "one entry" : `${n} entries`}.`,
  missing: (n: number) =>
    n === 1
      ? "One entry is missing between those there."
      : `${counted(n)} entries are missing between those there.`,
  refused: (n: number) => (n === 1 ? "One cannot be read:" : `${counted(n)} cannot be read:`),
  openAnyway: "Open what can be read",
};
