import { type Finish, finishInk, finishToWriteOn, type Ground } from "../../core/colour/finish-colour.ts";
import { hexFromSrgb, srgbFromHex } from "../../core/colour/srgb.ts";
import type { Light } from "./light.ts";

/** The colour of the finish in question as the page wears it: as a fill, as text or line per light, and text on it. */
export interface FinishLook {
  readonly fill: string;
  readonly on: string;
  readonly ink: Readonly<Record<Light, string>>;
}

/** Ground and sheet of each light, as in `look/tokens.css`: what a finish's ink must be read on. */
const grounds: Record<Light, Ground> = {
  day: { grounds: [srgbFromHex("#ECEFEA"), srgbFromHex("#F9FAF7")], text: "darker" },
  dark: { grounds: [srgbFromHex("#12181E"), srgbFromHex("#1B232A")], text: "lighter" },
  dim: { grounds: [srgbFromHex("#0A0907"), srgbFromHex("#15120D")], text: "lighter" },
};

export function finishLook(finish: Finish): FinishLook {
  const { fill, text } = finishToWriteOn(finish);
  const ink = (light: Light) => hexFromSrgb(finishInk(finish, grounds[light]));
  return {
    fill: hexFromSrgb(fill),
    on: hexFromSrgb(text),
    ink: { day: ink("day"), dark: ink("dark"), dim: ink("dim") },
  };
}

/** Custom properties for an element; nothing when there is no finish, so the neutral tokens stand. */
export function finishStyle(look: FinishLook | undefined, light: Light): Record<string, string> {
  if (look === undefined) return {};
  return { "--finish": look.fill, "--on-finish": look.on, "--finish-ink": look.ink[light] };
}
