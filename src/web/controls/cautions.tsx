import { createMemo, For, Show } from "solid-js";
import { type Act, cautionsFor, type Caution as Known } from "../../core/safety/cautions.ts";
import type { Component } from "../../core/solution/component.ts";
import type { Composition } from "../../core/solution/composition.ts";
import * as words from "../words/words.ts";
import { Caution } from "./caution.tsx";

/**
 * The cautions of an act with a liquid, where the act is: what to do first, when the vapour catches, and all else a tap
 * below. What a front label hides stands before everything.
 */
export function Cautions(props: {
  readonly act: Act;
  readonly liquid: Composition;
  /** The shop's air [°C], where it was read. */
  readonly airC?: number | undefined;
}) {
  const known = createMemo(() =>
    cautionsFor(
      props.act,
      (Object.entries(props.liquid) as [Component, number][]).map(([component, massFraction]) => ({
        component,
        massFraction,
      })),
    ),
  );
  const hidden = () => known().filter((one) => isHidden(one));
  const fire = () => known().filter((one) => one.code === "catches-fire");
  const rest = () => known().filter((one) => !isHidden(one) && one.code !== "catches-fire");
  const says = (one: Known) => inWords(one, props.airC);
  return (
    <Caution says={words.cautions.lead(props.act)}>
      <For each={[...hidden(), ...fire()]}>{(one) => <>{says(one)} </>}</For>
      {words.cautions.estimate}
      <Show when={rest().length > 0}>
        <details>
          <summary>{words.cautions.more}</summary>
          <ul>
            <For each={rest()}>{(one) => <li>{says(one)}</li>}</For>
          </ul>
        </details>
      </Show>
    </Caution>
  );
}

const isHidden = (one: Known): boolean => ["methanol", "ketone", "unnamed-share"].includes(one.code);

function inWords(one: Known, airC: number | undefined): string {
  switch (one.code) {
    case "methanol":
      return words.cautions.methanol(one.limit);
    case "ketone":
      return words.cautions.ketone(one.component, one.flashPoint);
    case "unnamed-share":
      return words.cautions.unnamed(one.massFraction);
    case "catches-fire":
      return words.cautions.fire(one.component, one.flashPoint, airC);
    case "breathing-limit":
      return words.cautions.breathing(one.component, one.limit);
    case "cartridge-does-not-hold":
      return words.cautions.cartridge(one.component);
    case "through-the-skin":
      return words.cautions.skin(one.component);
    default:
      return words.cautions.plain[one.code];
  }
}
