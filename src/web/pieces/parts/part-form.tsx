import { createUniqueId, For, Show } from "solid-js";
import { grainWays, surfaceNames } from "../../../core/area/part.ts";
import { Choice, Wrong } from "../../controls/choice.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { countedOf, optionalSizes, type PartDraft, type SizeName, sizeNames, turned } from "./part-draft.ts";
import { partProblem, surfaceName } from "./part-words.ts";
import { PartsDrawing } from "./parts-drawing.tsx";
import type { PartFigures } from "./parts-total.ts";
import { type BareUnit, isCount, readSize } from "./read-part.ts";

export interface PartFormProps {
  readonly part: PartFigures;
  readonly unit: BareUnit;
  readonly onChange: (draft: PartDraft) => void;
  readonly onDone: () => void;
}

/** The sizes of one part, how many there are, and which of its surfaces are counted. */
export function PartForm(props: PartFormProps) {
  const draft = () => props.part.draft;
  const put = (change: Partial<PartDraft>) => props.onChange({ ...draft(), ...change });
  const hasProfile = () => draft().part === "turned-leg" || draft().part === "moulding";
  const id = createUniqueId();
  return (
    <div class="part-form stack">
      <p class="soft small">
        {words.parts.kinds[draft().part]}. {words.parts.inUnit[props.unit]}
      </p>
      <div class="sizes">
        <TextField label={words.parts.name} value={draft().name} onInput={(name) => put({ name })} />
        <CountField {...props} field="count" least={1} most={1000} />
        <For
          each={(sizeNames[draft().part] as readonly SizeName[]).filter((size) => size !== "drawerHeight")}
        >
          {(size) => <SizeField {...props} size={size} />}
        </For>
        <Show when={draft().part === "carcase"}>
          <CountField {...props} field="shelves" least={0} most={200} />
          <CountField {...props} field="drawers" least={0} most={200} />
          <Show when={Number(draft().drawers) > 0}>
            <SizeField {...props} size="drawerHeight" />
          </Show>
        </Show>
      </div>
      <Show when={hasProfile()}>
        <ProfileField {...props} />
      </Show>
      <Show when={draft().part === "panel"}>
        <Choice
          label={words.parts.grain}
          inline
          value={draft().grain}
          options={grainWays.map((value) => ({ value, label: words.parts.grainWays[value] }))}
          onChange={(grain) => put({ grain })}
        />
      </Show>
      <Show when={surfaceNames[draft().part].length > 1}>
        <SurfaceTicks {...props} />
      </Show>
      <Show when={props.part.found?.ok}>
        <PartsDrawing parts={[props.part]} unit={props.unit} />
      </Show>
      <Wrong id={id} says={partProblem(props.part)} />
      <button type="button" onClick={() => props.onDone()}>
        {words.parts.done}
      </button>
    </div>
  );
}

function SizeField(props: PartFormProps & { readonly size: SizeName }) {
  const optional = () => optionalSizes.includes(props.size);
  return (
    <QuantityField
      label={words.parts.sizes[props.size]}
      typed={props.part.draft.sizes[props.size] ?? ""}
      reading={readSize(props.part.draft, props.size, props.unit)}
      hint={words.parts.sizeHints[props.size]}
      optional={optional()}
      onInput={(typed) =>
        props.onChange({ ...props.part.draft, sizes: { ...props.part.draft.sizes, [props.size]: typed } })
      }
    />
  );
}

function CountField(
  props: PartFormProps & {
    readonly field: "count" | "shelves" | "drawers";
    readonly least: number;
    readonly most: number;
  },
) {
  const value = () => props.part.draft[props.field];
  const wrong = () => (props.field === "count" ? words.parts.countWrong : words.parts.someWrong);
  return (
    <TextField
      label={words.parts[props.field]}
      value={value()}
      inputMode="numeric"
      wrong={isCount(value(), props.least, props.most) ? undefined : wrong()}
      onInput={(typed) => props.onChange({ ...props.part.draft, [props.field]: typed })}
    />
  );
}

function ProfileField(props: PartFormProps) {
  const turnedLeg = () => props.part.draft.part === "turned-leg";
  const wrong = () => {
    const { profile } = props.part.reading;
    return profile.ok ? undefined : words.parts.profileWrong(profile.line);
  };
  return (
    <TextField
      lines
      label={turnedLeg() ? words.parts.profileTurned : words.parts.profileMoulding}
      hint={turnedLeg() ? words.parts.profileTurnedHint : words.parts.profileMouldingHint}
      value={props.part.draft.profile}
      wrong={wrong()}
      onInput={(profile) => props.onChange({ ...props.part.draft, profile })}
    />
  );
}

function SurfaceTicks(props: PartFormProps) {
  const draft = () => props.part.draft;
  return (
    <fieldset class="choice">
      <legend>{words.parts.finished}</legend>
      <div class="options">
        <For each={surfaceNames[draft().part]}>
          {(surface) => (
            <label>
              <input
                type="checkbox"
                checked={countedOf(draft()).includes(surface)}
                onChange={() => props.onChange(turned(draft(), surface))}
              />
              <span>{surfaceName(draft().part, surface)}</span>
            </label>
          )}
        </For>
      </div>
    </fieldset>
  );
}
