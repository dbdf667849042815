import { createSignal, For, Show } from "solid-js";
import { Choice } from "../controls/choice.tsx";
import * as words from "../words/words.ts";

const t = words.pairing.letIn;
type Kind = keyof typeof t.steps;

/** Leads through trusting the shop's certificate, for the phone at hand. */
export function TrustSteps(props: { readonly fingerprint: string | null; readonly onward: string }) {
  const [kind, setKind] = createSignal<Kind>(/iPhone|iPad/.test(navigator.userAgent) ? "ios" : "android");
  return (
    <section class="hung stack">
      <h2>{t.insecureHeading}</h2>
      <p>{t.insecureSays}</p>
      <Choice
        inline
        label={t.which}
        value={kind()}
        options={[
          { value: "android", label: t.android },
          { value: "ios", label: t.ios },
        ]}
        onChange={setKind}
      />
      <ol class="steps">
        <For each={t.steps[kind()]}>{(step) => <li>{step}</li>}</For>
      </ol>
      <a class="press wide" href="/lacbench-authority.crt" download="lacbench-authority.crt">
        {t.fetchIt}
      </a>
      <Show when={props.fingerprint} keyed>
        {(sha256) => (
          <p>
            {t.fingerprint} <code>{sha256}</code>
          </p>
        )}
      </Show>
      <p class="small soft">{t.limits}</p>
      <a class="press main" href={props.onward}>
        {t.goOn}
      </a>
    </section>
  );
}
