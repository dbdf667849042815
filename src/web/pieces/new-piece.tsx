import { createMemo, createSignal, Show } from "solid-js";
import { methodDefaults, pieceMethods } from "../../core/pieces/method-defaults.ts";
import { cut as cutOf, poundsPerUsGallonFromCut } from "../../core/units.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { address, navigate } from "../router.ts";
import { finishLook } from "../shell/finish-look.ts";
import { now } from "../shell/now.ts";
import { Page } from "../shell/page.tsx";
import { dayOf } from "../words/time.ts";
import { words } from "../words/words.ts";
import { emptyDraft, type PieceDraft, planFrom, planInput, scheduleBody } from "./draft.ts";
import { eveningChoices } from "./evenings.ts";
import { finishOfRecipe } from "./finish-of-recipe.ts";
import "./pieces.css";
import { PlanFigures } from "./plan-figures.tsx";
import { fromTrial } from "./prefill.ts";
import { costOf, madeOf, resinsOnShelf, solventInput, solventsOnShelf } from "./shelf-choice.ts";
import { EveningStrip } from "./strip.tsx";

/** A piece is described and planned in one go; the plan is worked out while the person types. */
export function NewPieceView() {
  const book = useBook();
  const won = fromTrial(book.whole(), address().query);
  const [draft, setDraft] = createSignal<PieceDraft>({
    ...emptyDraft(dayOf(now(), book.zone)),
    ...won?.filled,
    ...madeOf(book.whole(), won?.batch ?? null),
  });
  const [told, setTold] = createSignal(false);
  const put = (change: Partial<PieceDraft>) => setDraft((before) => ({ ...before, ...change }));

  const resins = book.view("pieces:resins", resinsOnShelf);
  const solvents = book.view("pieces:solvents", solventsOnShelf);
  const resin = () => resins().find((m) => m.id === draft().resin) ?? null;
  const solvent = () => solvents().find((m) => m.id === draft().solvent) ?? null;
  const area = createMemo(() => readQuantity(draft().area, fields.area));
  const cutRead = createMemo(() => readQuantity(draft().cut, fields.cut));
  const input = createMemo(() => {
    const composition = solvent()?.composition;
    const [areaRead, cutGiven] = [area(), cutRead()];
    return planInput(draft(), {
      areaM2: areaRead.ok ? areaRead.value.si : undefined,
      cutLbPerGal: cutGiven.ok ? poundsPerUsGallonFromCut(cutOf(cutGiven.value.si)) : undefined,
      solvent: composition === undefined || composition === null ? undefined : solventInput(composition),
    });
  });
  const plan = createMemo(() => planFrom(input()));
  const planned = () => {
    const found = plan();
    return found.ok ? found.value : undefined;
  };
  const refusal = () => {
    const found = plan();
    return found.ok || input() === undefined ? undefined : found.error;
  };
  const body = createMemo(() => {
    const [asked, found] = [input(), planned()];
    return asked === undefined || found === undefined
      ? undefined
      : scheduleBody(draft(), asked, found, { resin: resin()?.name, alcohol: solvent()?.name });
  });
  const cost = () => {
    const found = planned();
    return found === undefined ? null : costOf(resin(), solvent(), found.resinG, found.solventMl);
  };
  const finish = () => {
    const found = finishOfRecipe(resin()?.resin?.grade, input()?.cutLbPerGal);
    return found === undefined ? undefined : finishLook(found);
  };

  const keep = () => {
    setTold(true);
    const [areaRead, schedule] = [area(), body()];
    if (draft().name.trim() === "" || !areaRead.ok || schedule === undefined) return;
    const wood = draft().wood.trim();
    const piece = book.write({
      kind: "piece-described",
      body: { name: draft().name.trim(), area: areaRead.value, ...(wood === "" ? {} : { wood }) },
    });
    book.write({
      kind: "piece-scheduled",
      about: [piece, ...(won === null ? [] : [won.trial])],
      body: { ...schedule, ...(won === null ? {} : { fromTrial: won.trial }) },
    });
    navigate(`/pieces/${piece}`);
  };

  const wrongIn = (field: string, says: string) => (refusal()?.field.startsWith(field) ? says : undefined);
  return (
    <Page title={words.pieces.newTitle} finish={finish()}>
      <h1>{words.pieces.newTitle}</h1>
      <Show when={won} keyed>
        {(from) => <p class="soft">{words.pieces.fromTrial(from.question)}</p>}
      </Show>
      <div class="piece-desk">
        <section class="hung stack">
          <TextField
            label={words.pieces.name}
            value={draft().name}
            hint={words.pieces.nameHint}
            wrong={told() && draft().name.trim() === "" ? words.pieces.nameMissing : undefined}
            onInput={(name) => put({ name })}
          />
          <QuantityField
            label={words.pieces.area}
            typed={draft().area}
            reading={area()}
            hint={words.pieces.areaHint}
            told={told()}
            onInput={(typed) => put({ area: typed })}
          />
          <TextField label={words.pieces.wood} value={draft().wood} onInput={(wood) => put({ wood })} />
          <Select
            label={words.pieces.resin}
            empty={words.pieces.fromShelf}
            value={draft().resin}
            options={resins().map((m) => ({ value: m.id, label: m.name }))}
            onChange={(id) => put({ resin: id })}
          />
          <Select
            label={words.pieces.solvent}
            empty={words.pieces.fromShelf}
            value={draft().solvent}
            options={solvents().map((m) => ({ value: m.id, label: m.name }))}
            wrong={told() && solvent() === null ? words.pieces.noSolventChosen : undefined}
            onChange={(id) => put({ solvent: id })}
          />
          <Show when={solvents().length === 0}>
            <p>
              {words.pieces.noSolvent} <a href="/shelf">{words.pieces.toShelf}</a>
            </p>
          </Show>
          <QuantityField
            label={words.pieces.cut}
            typed={draft().cut}
            reading={cutRead()}
            told={told()}
            onInput={(typed) => put({ cut: typed })}
          />
          <TextField
            label={words.pieces.coats}
            value={draft().coats}
            inputMode="numeric"
            wrong={wrongIn("coats", words.pieces.coatsWrong)}
            onInput={(coats) => put({ coats })}
          />
          <Choice
            label={words.pieces.method}
            inline
            value={draft().method}
            options={pieceMethods.map((value) => ({ value, label: words.pieces.methods[value] }))}
            onChange={(method) => put({ method })}
          />
          <TextField
            label={words.pieces.use}
            value={draft().perM2}
            inputMode="decimal"
            hint={words.pieces.useHint(String(methodDefaults[draft().method].litresPerM2 * 1000))}
            wrong={wrongIn("millilitresPerM2PerCoat", words.pieces.perM2Wrong)}
            onInput={(perM2) => put({ perM2 })}
          />
          <TextField
            label={words.pieces.spare}
            value={draft().spare}
            inputMode="numeric"
            hint={words.pieces.spareHint}
            wrong={wrongIn("spareShare", words.pieces.spareWrong)}
            onInput={(spare) => put({ spare })}
          />
          <TextField
            label={words.pieces.firstEvening}
            type="date"
            value={draft().firstEvening}
            wrong={told() && draft().firstEvening === "" ? words.pieces.firstWrong : undefined}
            onInput={(firstEvening) => put({ firstEvening })}
          />
          <div class="side-by-side">
            <TextField
              label={words.pieces.from}
              type="time"
              value={draft().from}
              onInput={(from) => put({ from })}
            />
            <TextField
              label={words.pieces.until}
              type="time"
              value={draft().until}
              wrong={
                wrongIn("evenings", words.pieces.untilWrong) ?? wrongIn("windows", words.pieces.untilWrong)
              }
              onInput={(until) => put({ until })}
            />
          </div>
          <Choice
            label={words.pieces.which}
            value={draft().which}
            options={eveningChoices.map((value) => ({ value, label: words.pieces.choices[value] }))}
            onChange={(which) => put({ which })}
          />
        </section>
        <section class="hung stack" aria-live="polite">
          <Show when={planned()} keyed fallback={<p class="soft">{words.pieces.notYet}</p>}>
            {(found) => (
              <>
                <PlanFigures
                  plan={found}
                  input={input() as NonNullable<ReturnType<typeof input>>}
                  cost={cost()}
                />
                <EveningStrip steps={body()?.steps ?? []} />
              </>
            )}
          </Show>
          <button type="button" class="main" onClick={keep}>
            {words.pieces.keep}
          </button>
          <p class="soft small">{words.pieces.usual}</p>
        </section>
      </div>
    </Page>
  );
}
