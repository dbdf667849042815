import { For, onMount, Show } from "solid-js";
import * as words from "../../words/words.ts";
import type { PartDraft } from "./part-draft.ts";
import { PartForm } from "./part-form.tsx";
import { partHeading, partName, partProblem, partSummary } from "./part-words.ts";
import { areaText, type PartFigures } from "./parts-total.ts";
import type { BareUnit } from "./read-part.ts";

/** One part of the list: what it comes to, and its form while it is being changed. */
export function PartRow(props: {
  readonly part: PartFigures;
  readonly unit: BareUnit;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly onChange: (draft: PartDraft) => void;
  readonly onTakeOut: () => void;
}) {
  let row!: HTMLLIElement;
  const focus = (what: "input" | "button") => row.querySelector<HTMLElement>(what)?.focus();
  const turn = (open: boolean) => {
    props.onOpen(open);
    focus(open ? "input" : "button");
  };
  onMount(() => {
    if (props.open) focus("input"); // a part that was just added is filled in next
  });
  const area = () => {
    const { found } = props.part;
    return found?.ok ? areaText(found.value.areaM2, props.unit) : words.parts.notYet;
  };
  const flags = () => (props.part.found?.ok ? props.part.found.value.flags : []);
  return (
    <li ref={row}>
      <p>
        <b>{words.parts.partArea(partHeading(props.part.draft), area())}</b>
      </p>
      <Show
        when={props.open}
        fallback={
          <>
            <p class="soft small">{partSummary(props.part)}</p>
            <Show when={partProblem(props.part)}>
              <p class="wrong small">{partProblem(props.part)}</p>
            </Show>
            <div class="side-by-side">
              <button type="button" onClick={() => turn(true)}>
                {words.parts.change(partName(props.part.draft))}
              </button>
              <button type="button" onClick={() => props.onTakeOut()}>
                {words.parts.takeOut(partName(props.part.draft))}
              </button>
            </div>
          </>
        }
      >
        <PartForm part={props.part} unit={props.unit} onChange={props.onChange} onDone={() => turn(false)} />
      </Show>
      <For each={flags()}>
        {(flag) => <p class="soft small">{words.parts.flags[flag.code] ?? flag.message}</p>}
      </For>
    </li>
  );
}
