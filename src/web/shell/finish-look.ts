import type { Light } from "./light.ts";

/** The colour of the finish in question as the page wears it: as a fill, as text or line per light, and text on it. */
export interface FinishLook {
  readonly fill: string;
  readonly on: string;
  readonly ink: Readonly<Record<Light, string>>;
}

/** Custom properties for an element; nothing when there is no finish, so the neutral tokens stand. */
export function finishStyle(look: FinishLook | undefined, light: Light): Record<string, string> {
  if (look === undefined) return {};
  return { "--finish": look.fill, "--on-finish": look.on, "--finish-ink": look.ink[light] };
}
