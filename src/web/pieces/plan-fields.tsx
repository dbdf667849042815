import { Show } from "solid-js";
import { methodDefaults, type PieceMethod, pieceMethods } from "../../core/pieces/method-defaults.ts";
import type { OwnUse } from "../../core/views/planned-used.ts";
import { Choice } from "../controls/choice.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { withDigits } from "../words/number.ts";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { EveningFields } from "./evening-fields.tsx";
import { LayerFields } from "./layer-fields.tsx";
import { PartsEditor } from "./parts/parts-editor.tsx";
import type { Planning } from "./planning.ts";
import { ScheduleFields } from "./schedule-fields.tsx";
import { SurfaceFields } from "./surface-fields.tsx";

interface FieldsProps {
  readonly planning: Planning;
}

/** What a plan is made from: the piece, the recipe, and the evenings. */
export function PlanFields(props: FieldsProps & { readonly described: boolean }) {
  return (
    <section class="hung stack piece-fields">
      <Show when={!props.described}>
        <NameField planning={props.planning} />
      </Show>
      <AreaFields planning={props.planning} />
      <Show when={!props.described}>
        <WoodField planning={props.planning} />
      </Show>
      <LayerFields planning={props.planning} />
      <RecipeFields planning={props.planning} />
      <SurfaceFields planning={props.planning} />
      <WhenFields planning={props.planning} />
    </section>
  );
}

function NameField(props: FieldsProps) {
  const { draft, put, told } = props.planning;
  return (
    <TextField
      label={words.pieces.name}
      value={draft().name}
      hint={words.pieces.nameHint}
      wrong={told() && draft().name.trim() === "" ? words.pieces.nameMissing : undefined}
      onInput={(name) => put({ name })}
    />
  );
}

function AreaFields(props: FieldsProps) {
  const { draft, put, told, area } = props.planning;
  return (
    <>
      <QuantityField
        label={words.pieces.area}
        typed={draft().area}
        reading={area()}
        hint={words.pieces.areaHint}
        told={told()}
        onInput={(typed) => put({ area: typed })}
      />
      <PartsEditor planning={props.planning} />
    </>
  );
}

function WoodField(props: FieldsProps) {
  const { draft, put } = props.planning;
  return <TextField label={words.pieces.wood} value={draft().wood} onInput={(wood) => put({ wood })} />;
}

function RecipeFields(props: FieldsProps) {
  const { draft, put, told, resins, solvents, solvent, refused } = props.planning;
  const wrongIn = (field: string, says: string) => (refused()?.startsWith(field) ? says : undefined);
  return (
    <>
      <Select
        label={words.pieces.resin}
        empty={words.pieces.fromShelf}
        value={draft().resin}
        options={resins().map((material) => ({ value: material.id, label: material.name }))}
        onChange={(resin) => put({ resin })}
      />
      <Select
        label={words.pieces.solvent}
        empty={words.pieces.fromShelf}
        value={draft().solvent}
        options={solvents().map((material) => ({ value: material.id, label: material.name }))}
        wrong={told() && solvent() === null ? words.pieces.noSolventChosen : undefined}
        onChange={(chosen) => put({ solvent: chosen })}
      />
      <Show when={solvents().length === 0}>
        <p>
          {words.pieces.noSolvent} <a href="/shelf">{words.pieces.toShelf}</a>
        </p>
      </Show>
      <ScheduleFields planning={props.planning} />
      <Show when={draft().steps === null}>
        <PlainFields planning={props.planning} />
      </Show>
      <TextField
        label={words.pieces.spare}
        value={draft().spare}
        inputMode="numeric"
        hint={words.pieces.spareHint}
        wrong={wrongIn("spareShare", words.pieces.spareWrong)}
        onInput={(spare) => put({ spare })}
      />
    </>
  );
}

/** So many coats of one cut, put on in one way. */
function PlainFields(props: FieldsProps) {
  const { draft, put, told, cutRead, own, refused } = props.planning;
  const wrongIn = (field: string, says: string) => (refused()?.startsWith(field) ? says : undefined);
  return (
    <>
      <div class="side-by-side">
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
      </div>
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
        hint={useHint(draft().method, own())}
        wrong={wrongIn("millilitresPerM2PerCoat", words.pieces.perM2Wrong)}
        onInput={(perM2) => put({ perM2 })}
      />
    </>
  );
}

/** The person's own use where there is enough of it, the usual one otherwise; what else the plan has of theirs. */
function useHint(method: PieceMethod, { millilitresPerM2, minutesPerM2, leastWaitMinutes }: OwnUse): string {
  const liquid =
    millilitresPerM2 === null
      ? words.pieces.useHint(String(methodDefaults[method].litresPerM2 * 1000))
      : words.pieces.ownUse(withDigits(millilitresPerM2.value, 2), millilitresPerM2.coats);
  const hands =
    minutesPerM2 === null
      ? []
      : [words.pieces.ownHands(withDigits(minutesPerM2.value, 2), minutesPerM2.coats)];
  const wait =
    leastWaitMinutes === null
      ? []
      : [words.pieces.ownWait(lengthInWords(leastWaitMinutes.value), leastWaitMinutes.coats)];
  return [liquid, ...hands, ...wait].join(". ");
}

function WhenFields(props: FieldsProps) {
  const { draft, put, told, refused } = props.planning;
  const wrongEvening = () => {
    const field = refused() ?? "";
    return field.startsWith("evenings") || field.startsWith("windows") ? words.pieces.untilWrong : undefined;
  };
  return (
    <>
      <EveningFields
        draft={{ ...draft(), first: draft().firstEvening }}
        firstWrong={told() && draft().firstEvening === "" ? words.pieces.firstWrong : undefined}
        untilWrong={wrongEvening()}
        onChange={({ first, ...others }) =>
          put({ ...others, ...(first === undefined ? {} : { firstEvening: first }) })
        }
      />
      <TextField
        label={
          <>
            {words.delivery.wantedBy} ({words.controls.optional})
          </>
        }
        type="date"
        value={draft().wanted}
        onInput={(wanted) => put({ wanted })}
      />
    </>
  );
}
