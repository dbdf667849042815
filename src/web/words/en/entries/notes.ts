import type { bookKinds } from "../../../../core/notebook/kinds/book.ts";
import { also, type Sayings } from "./naming.ts";

const plain = (value: unknown): string => (typeof value === "string" ? value : JSON.stringify(value));

export const noteSayings: Sayings<keyof typeof bookKinds> = {
  "notebook-begun": (b) => `Notebook begun: ${b.name}${b.invented === true ? ", all of it made up" : ""}.`,
  "person-named": (b) => `${b.name} works here.`,
  happening: (b) =>
    `${b.what === "other" ? "It happened" : b.what.charAt(0).toUpperCase() + b.what.slice(1)}${also(": ", b.note)}.`,
  "default-changed": (b) =>
    `${b.name} is ${plain(b.value)} from now on${b.was === undefined ? "" : ` (it was ${plain(b.was)})`}.`,
  decision: (b) => `Decided: ${b.text}`,
  photograph: (b) => `Photograph${also(": ", b.note)}.`,
  note: (b) => b.text,
  struck: (b, name) => `Struck out: ${name.about}${also(", because ", b.why)}`,
  withdrawn: (b) =>
    `${b.entries.length === 1 ? "One entry" : `${b.entries.length} entries`} withdrawn${also(": ", b.why)}.`,
};
