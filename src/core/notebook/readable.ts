import type { KeptEntry } from "./entry.ts";
import type { Placed } from "./placed.ts";
import { understand } from "./understanding.ts";
import { isStub } from "./withdrawal.ts";

function canBeRead(kept: KeptEntry): boolean {
  if (isStub(kept.entry)) return false;
  const understanding = kept.understanding ?? understand(kept.entry);
  return understanding.as === "not-understood"
    ? understanding.unknown === "kind"
    : understanding.as === "understood";
}

/**
 * Whether views may see an entry: not with a body of another shape than its kind promises, nor with none. Unknown kinds harm
 * none. Worked out when a view first looks: of a long notebook, a page looks at little.
 */
export function isReadable(node: Placed): boolean {
  node.readable ??= canBeRead(node.kept);
  return node.readable;
}
