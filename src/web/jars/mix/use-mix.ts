import { createMemo, createSignal } from "solid-js";
import { resinGrades } from "../../../core/colour/resin-grades.ts";
import type { MaterialView } from "../../../core/views/material.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import type { QuantityReading } from "../../controls/quantity-reading.ts";
import { readQuantity } from "../../controls/read-quantity.ts";
import * as words from "../../words/words.ts";
import { instrumentsFor, useInstrument } from "../acts/instruments.tsx";
import { useVessel } from "../acts/vessel.tsx";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { flakesOf } from "../flakes-of.ts";
import { isWeight } from "../shop-units.ts";
import { expected, type MixField, mixFields, type Typed } from "./mix-fields.ts";
import { type MixFrom, type MixGiven, mixPlan, recipeOf } from "./mix-plan.ts";
import { pouredFrom, weighedFrom } from "./poured-from.ts";
import { useSeveral } from "./several.tsx";
import { trapIn } from "./traps.ts";
import { type Ingredients, writeMix } from "./write-mix.ts";

/** `lemon` of `dewaxed lemon`: what a jar's code begins with. */
function gradeOf(resin: MaterialView | undefined): string {
  const words = (resin?.resin?.grade ?? "").toLowerCase().split(/[^a-z]+/);
  return words.find((word) => resinGrades.some(({ grade }) => grade === word)) ?? resin?.name ?? "";
}

const untouched: Typed = { flakes: "", cut: "", alcohol: "", makes: "" };
/** What was being typed, by notebook, kept while the person looks at another page. */
const drafts = new Map<string, Typed>();

export type MixDraft = ReturnType<typeof useMix>;

/** A mix being typed, any two amounts giving the rest, and the entry that it becomes. */
export function useMix(book: OpenBook) {
  const [typed, setTyped] = createSignal<Typed>(drafts.get(book.id) ?? untouched);
  const [by, setBy] = createSignal<"jug" | "scale">("jug");
  const [told, setTold] = createSignal(false);
  const resins = useSeveral(book, "resin");
  const solvents = useSeveral(book, "solvent");
  const scale = useInstrument(book, "scale");
  const jug = useInstrument(book, "jug");
  const vessel = useVessel(book, () => nextCode(letterOf(gradeOf(resins.first())), codesTaken(book)));
  const put = (field: MixField, text: string) => {
    const next = { ...typed(), [field]: text };
    drafts.set(book.id, next);
    setTyped(next);
  };

  /** Bottles and bags as one alcohol and one lot of flakes; undefined while a choice or a share is open. */
  const ingredients = createMemo<Ingredients | undefined>(() => {
    const [bags, bottles] = [resins.materials(), solvents.materials()];
    const compositions = bottles?.flatMap((one) => one.composition ?? []);
    const alcohol =
      compositions === undefined || compositions.length !== bottles?.length
        ? undefined
        : pouredFrom(compositions, solvents.shares());
    const flakes = weighedFrom(resins.shares());
    if (bottles === undefined || compositions === undefined || alcohol === undefined || flakes === undefined)
      return undefined;
    return {
      bags,
      bottles,
      compositions,
      alcohol,
      flakes,
      bagShares: resins.shares(),
      bottleShares: solvents.shares(),
    };
  });

  const plain = createMemo(
    () =>
      Object.fromEntries(
        mixFields.map((field) => [field, readQuantity(typed()[field], expected[field])]),
      ) as Record<MixField, QuantityReading>,
  );
  const typedValue = (field: MixField) => {
    const reading = plain()[field];
    return reading.ok && reading.value.si > 0 ? reading.value : undefined;
  };
  const given = createMemo<MixGiven>(() => ({
    flakes: ingredients()?.flakes.total ?? typedValue("flakes"),
    cut: typedValue("cut"),
    alcohol: ingredients()?.alcohol.total ?? typedValue("alcohol"),
    makes: typedValue("makes"),
    vessel: vessel.capacity(),
  }));
  /** Said by the bottles or the bags themselves: not asked again. */
  const saidAbove = (field: MixField): boolean =>
    (field === "flakes" && ingredients()?.flakes.total !== undefined) ||
    (field === "alcohol" && ingredients()?.alcohol.total !== undefined);
  const from = createMemo<MixFrom | undefined>(() => {
    const found = ingredients();
    const instrument = (use: "scale" | "jug", id: string | undefined) =>
      instrumentsFor(book, use).find((one) => one.id === id);
    if (found === undefined) return undefined;
    return {
      composition: found.alcohol.composition,
      resins: found.flakes.massShares.map((massShare, i) => ({ massShare, ...flakesOf(found.bags?.[i]) })),
      scale: instrument("scale", scale.id()),
      jug: instrument("jug", jug.id()),
    };
  });
  const unread = () =>
    mixFields.some((field) => !saidAbove(field) && typed()[field].trim() !== "" && !plain()[field].ok);
  const plan = createMemo(() => {
    const sources = from();
    return sources === undefined || unread() ? undefined : mixPlan(given(), sources);
  });
  const mixed = () => {
    const found = plan();
    return found?.ok ? found.value : undefined;
  };
  /** What was typed and can mean two amounts, with the cut that each makes. */
  const trap = createMemo(() => {
    const sources = from();
    return sources === undefined ? undefined : trapIn(typed(), recipeOf(sources));
  });
  /** Asked in full below, it is not asked again beside the field. */
  const readings = createMemo(() => {
    const field = trap()?.field;
    if (field === undefined || plain()[field].ok) return plain();
    const problem = { says: words.jars.mix.askedBelow, meanings: [], ask: true };
    return { ...plain(), [field]: { ok: false, problem } as const };
  });
  const alcoholBy = (): "jug" | "scale" => {
    const told = given().alcohol;
    return told === undefined ? by() : isWeight(told) ? "scale" : "jug";
  };

  /** With three given, the fields that could be worked out again from the others. */
  const tooMany = () => {
    const full = mixFields.filter((field) => given()[field] !== undefined);
    return full.length > 2 ? full.filter((field) => !saidAbove(field)) : [];
  };

  const write = (): string | undefined => {
    setTold(true);
    const [found, all] = [mixed(), ingredients()];
    if (found === undefined || all?.bags === undefined || !vessel.check()) return undefined;
    const id = writeMix(book, {
      ...all,
      bags: all.bags,
      mixed: found,
      given: given(),
      by: alcoholBy(),
      code: vessel.code(),
      glass: vessel.write(),
      scale: scale.on,
      jug: jug.on,
    });
    drafts.delete(book.id);
    return id;
  };
  return {
    typed,
    put,
    by,
    setBy,
    told,
    resins,
    solvents,
    ingredients,
    /** Grades and shares of what was chosen, for its colour. */
    bags: () =>
      (ingredients()?.bags ?? []).map((bag, i) => ({
        grade: bag.resin?.grade,
        share: ingredients()?.flakes.massShares[i] ?? 0,
      })),
    scale,
    jug,
    vessel,
    readings,
    trap,
    given,
    saidAbove,
    mixed,
    refused: () => {
      const found = plan();
      return found === undefined || found.ok ? undefined : found.error;
    },
    alcoholBy,
    tooMany,
    write,
  };
}
