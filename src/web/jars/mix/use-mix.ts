import { createMemo, createSignal } from "solid-js";
import { resinGrades } from "../../../core/colour/resin-grades.ts";
import { cut, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import type { MaterialView } from "../../../core/views/material.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import type { QuantityReading } from "../../controls/quantity-reading.ts";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { words } from "../../words/words.ts";
import { instrumentsFor, useInstrument } from "../acts/instruments.tsx";
import { useVessel } from "../acts/vessel.tsx";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { isWeight } from "../shop-units.ts";
import { useResin, useSolvent } from "../solvents.tsx";
import { ifMeant, type MixGiven, mixPlan, worksOutGrams, worksOutMillilitres } from "./mix-plan.ts";

export const mixFields = ["flakes", "cut", "alcohol", "makes"] as const;
export type MixField = (typeof mixFields)[number];

const expected = {
  flakes: fields.mass,
  cut: fields.cut,
  alcohol: fields.massOrVolume,
  makes: fields.volume,
} as const;

type Typed = Record<MixField, string>;
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
  const resin = useResin(book);
  const solvent = useSolvent(book);
  const scale = useInstrument(book, "scale");
  const jug = useInstrument(book, "jug");
  const vessel = useVessel(book, () => nextCode(letterOf(gradeOf(resin.material())), codesTaken(book)));
  const put = (field: MixField, text: string) => {
    const next = { ...typed(), [field]: text };
    drafts.set(book.id, next);
    setTyped(next);
  };
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
    flakes: typedValue("flakes"),
    cut: typedValue("cut"),
    alcohol: typedValue("alcohol"),
    makes: typedValue("makes"),
    vessel: vessel.capacity(),
  }));
  const from = createMemo(() => {
    const composition = solvent.material()?.composition;
    const instrument = (use: "scale" | "jug", id: string | undefined) =>
      instrumentsFor(book, use).find((one) => one.id === id);
    return composition === undefined || composition === null
      ? undefined
      : {
          composition,
          resin: resin.material(),
          scale: instrument("scale", scale.id()),
          jug: instrument("jug", jug.id()),
        };
  });
  const unread = () => mixFields.some((field) => typed()[field].trim() !== "" && !plain()[field].ok);
  const plan = createMemo(() => {
    const sources = from();
    return sources === undefined || unread() ? undefined : mixPlan(given(), sources);
  });
  const mixed = () => {
    const found = plan();
    return found?.ok ? found.value : undefined;
  };
  /** An ounce of alcohol is asked about, with what either meaning would make. */
  const ounce = createMemo(() => {
    const [sources, { alcohol }] = [from(), plain()];
    if (alcohol.ok || sources === undefined || alcohol.problem.meanings.length < 2) return undefined;
    const meant = alcohol.problem.meanings.flatMap((one) => ifMeant(one.typed, given(), sources) ?? []);
    return meant.length < 2 ? undefined : { typed: typed().alcohol.trim(), meant };
  });
  /** Asked in full below, it is not asked again beside the field. */
  const readings = createMemo(() => {
    const { alcohol } = plain();
    if (alcohol.ok || ounce() === undefined) return plain();
    const problem = { says: words.jars.mix.askedBelow, meanings: [], ask: true };
    return { ...plain(), alcohol: { ok: false, problem } as const };
  });
  const alcoholBy = (): "jug" | "scale" => {
    const reading = plain().alcohol;
    return reading.ok ? (isWeight(reading.value) ? "scale" : "jug") : by();
  };

  /** With three given, the fields that could be worked out again from the others. */
  const tooMany = () => {
    const full = mixFields.filter((field) => given()[field] !== undefined);
    return full.length > 2 ? full : [];
  };

  const write = (): string | undefined => {
    setTold(true);
    const [found, flakes, alcohol] = [mixed(), resin.id(), solvent.id()];
    if (found === undefined || flakes === undefined || alcohol === undefined || !vessel.check())
      return undefined;
    const glass = vessel.write();
    const worked =
      alcoholBy() === "jug" ? worksOutMillilitres(found.solventMl) : worksOutGrams(found.solventG);
    const aimed = given().cut;
    const id = book.write({
      kind: "batch-mixed",
      about: [flakes, alcohol, ...(glass === undefined ? [] : [glass])],
      body: {
        code: vessel.code(),
        resins: [{ material: flakes, amount: scale.on(given().flakes ?? worksOutGrams(found.resinG)) }],
        solvents: [
          { material: alcohol, amount: (alcoholBy() === "jug" ? jug : scale).on(given().alcohol ?? worked) },
        ],
        aimedCutLbPerGal: Number(
          (aimed === undefined ? found.cutLbPerGal : poundsPerUsGallonFromCut(cut(aimed.si))).toPrecision(4),
        ),
        ...(glass === undefined ? {} : { vessel: glass }),
      },
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
    resin,
    solvent,
    scale,
    jug,
    vessel,
    readings,
    ounce,
    given,
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
