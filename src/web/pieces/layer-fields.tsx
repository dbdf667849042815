import { layersOver, layersUnder } from "../../core/pieces/layers.ts";
import { Select } from "../controls/select.tsx";
import * as words from "../words/words.ts";
import type { Planning } from "./planning.ts";

/** What lies under the finish, and what goes over it. */
export function LayerFields(props: { readonly planning: Planning }) {
  const { draft, put } = props.planning;
  return (
    <>
      <Select
        label={words.layers.under}
        value={draft().under}
        options={layersUnder.map((value) => ({ value, label: words.layers.unders[value] }))}
        onChange={(under) => put({ under })}
      />
      <Select
        label={words.layers.over}
        value={draft().over}
        options={layersOver.map((value) => ({ value, label: words.layers.overs[value] }))}
        onChange={(over) => put({ over })}
      />
    </>
  );
}
