import { readyToRub } from "../../core/film/rubbing-out.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import type { NotebookReader } from "../../core/notebook/reader.ts";
import { metre } from "../../core/units.ts";
import { defaultValue } from "../../core/views/default-value.ts";
import { filmView } from "../../core/views/film.ts";
import { workTakesOff } from "../../core/views/film-defaults.ts";

type How = Body<"surface-worked">["how"];

export interface Risk {
  readonly goes: readonly string[];
  readonly may: readonly string[];
}

/** On which patches work would, or may, go through to the wood; bare wood has nothing to go through. */
export function riskOf(
  read: NotebookReader,
  trial: string,
  patches: readonly { readonly patch: string; readonly code: string }[],
  how: How,
): Risk {
  const usual = workTakesOff[how as keyof typeof workTakesOff];
  if (usual === undefined) return { goes: [], may: [] };
  const removes = metre(defaultValue(read, usual) / 1e6);
  const risks = patches.flatMap(({ patch, code }) => {
    const film = filmView(read, { trial, patch });
    if (film.coats.length === 0 || film.unknown.length === film.coats.length) return [];
    const nothing = metre(0);
    const asked = { needed: nothing, least: nothing, removes };
    return [{ code, risk: readyToRub(metre(film.thickness), film.standardUncertainty, nothing, asked).risk }];
  });
  return {
    goes: risks.filter(({ risk }) => risk === "goes through").map(({ code }) => code),
    may: risks.filter(({ risk }) => risk === "may go through").map(({ code }) => code),
  };
}
