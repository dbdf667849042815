import type { Kind } from "../../../../core/notebook/kinds/all.ts";
import { benchSayings } from "./bench.ts";
import { jarSayings } from "./jars.ts";
import { materialSayings } from "./materials.ts";
import type { Sayings } from "./naming.ts";
import { noteSayings } from "./notes.ts";
import { pieceSayings } from "./pieces.ts";
import { trialSayings } from "./trials.ts";

/** What an entry of each kind says in the Book. */
export const sayings: Sayings<Kind> = {
  ...materialSayings,
  ...jarSayings,
  ...benchSayings,
  ...trialSayings,
  ...pieceSayings,
  ...noteSayings,
};
