import type { Finish } from "../../core/colour/finish-colour.ts";
import { absorptionOfBlend, absorptionOfGrade } from "../../core/colour/resin-grades.ts";
import type { JarView } from "../../core/views/jar.ts";

/** The finish in a jar, for its colour; undefined where no grade of it is known or nothing can be reckoned. */
export function finishOfJar(
  jar: Pick<JarView, "known" | "grades" | "resins" | "solids">,
): Finish | undefined {
  const named = jar.grades.length > 0 ? jar.grades : jar.resins.map((resin) => resin.name);
  const parts = named.flatMap((grade) => {
    const absorption = absorptionOfGrade(grade);
    return absorption === undefined ? [] : [{ absorption, share: 1 / named.length }];
  });
  if (!jar.known || parts.length === 0) return undefined;
  return { absorption: absorptionOfBlend(parts), solids: jar.solids };
}
