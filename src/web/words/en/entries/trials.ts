import type { trialKinds } from "../../../../core/notebook/kinds/trials.ts";
import { also, list, type Sayings } from "./naming.ts";

const after = (coat: number | undefined): string => (coat === undefined ? "" : `, after coat ${coat}`);
const by = (who: string | undefined): string => (who === undefined ? "" : `, by ${who}`);
const key = (open: boolean): string => (open ? "after the key was opened" : "before the key was opened");

export const trialSayings: Sayings<keyof typeof trialKinds> = {
  "trial-asked": (b) =>
    `Trial asked: ${b.question} ${b.coats} coats; it varies ${list(b.varies.map((v) => v.factor))}, and looks at ${list(b.looksAt.map((r) => r.name))}.`,
  "trial-laid-out": (b, name) =>
    `${name.of(name.entry.about[0])}: ${b.patches.length} patches dealt onto ${b.boards.length} boards.`,
  "trial-key": (_, name) => `Key of ${name.about} sealed.`,
  "key-opened": (_, name) => `Key of ${name.about} opened.`,
  "trial-changed": (b, name) => `${name.about} changed: ${b.what}, because ${b.why} (${key(b.keyOpen)}).`,
  "patch-left-out": (b, name) =>
    `${name.of(`${name.entry.about[0]}/${b.patch}`)} left out: ${b.why}${also(", ", b.note)}${by(b.who)} (${key(b.keyOpen)}).`,
  "patch-brought-back": (b, name) =>
    `${name.of(`${name.entry.about[0]}/${b.patch}`)} brought back${also(": ", b.why)}${by(b.who)} (${key(b.keyOpen)}).`,
  "trial-closed": (b, name) =>
    `${name.about} closed${b.chosen === undefined ? "" : `: ${list(Object.entries(b.chosen).map(([factor, level]) => `${factor} ${level}`))}`}${also(", because ", b.why)}.`,
  judged: (b, name) =>
    `${name.of(`${name.entry.about[0]}/${b.patch}`)} judged, ${b.response}: ${b.level ?? (b.rank === undefined ? "" : `place ${b.rank}`)}${after(b.afterCoat)}${by(b.who)}.`,
  measured: (b, name) =>
    `${name.of(`${name.entry.about[0]}/${b.patch}`)} measured, ${b.response}: ${b.value.typed}${b.value.typed.includes(b.value.unit) ? "" : ` ${b.value.unit}`}${after(b.afterCoat)}${by(b.who)}.`,
  "compared-blind": (b) => `Compared blind (${b.form}), shown ${list(b.shown)}: “${b.answer}”${by(b.who)}.`,
};
