import type { JarView } from "../../core/views/jar.ts";

/** What can be done at a jar, by what it is for. */
export const actGroups = {
  see: ["look", "weigh", "dryDown", "dropTest"],
  change: ["strain", "thin", "series", "topUp", "restore", "correct", "blend", "pourBack"],
  out: ["pourOff", "spoilt", "empty"],
} as const;
export type ActGroup = keyof typeof actGroups;
export type JarAct = (typeof actGroups)[ActGroup][number];

/** The one thing to press at this jar: what usually comes next. */
export function nextAct(jar: JarView): JarAct | undefined {
  if (jar.emptied !== null) return undefined;
  if (!jar.known) return "dryDown";
  const seen = jar.looks.ready;
  const past = jar.children.length > 0;
  if (jar.stage === "stock" && !past) return seen?.doneByH == null ? "look" : "strain";
  if (jar.stage === "strained" && jar.driedDown === null) return "dryDown";
  if (jar.stage === "strained" && !past) return "thin";
  return "weigh";
}
