import { createResource, createSignal, Match, Show, Switch } from "solid-js";
import { openKeep } from "../book-store/open-keep.ts";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { type Door, pairingApi, SaidNo } from "./pairing-api.ts";
import { TrustSteps } from "./trust-steps.tsx";
import "./pairing.css";

const t = words.pairing.letIn;

/** The code stands behind the #, so that no browser sends it to anybody by itself. */
const codeHere = (): string => location.hash.slice(1);

/** The page that a phone comes to by the code: trusting the shop first where it must, then coming in. */
export function LetInPage() {
  document.title = words.shell.title(t.title);
  const [door, { refetch }] = createResource(() => pairingApi.door().catch(() => null));
  const [plainWill, setPlainWill] = createSignal(false);
  return (
    <main class="start pairing">
      <h1>
        <span class="mark">{words.shell.lacbench}</span> {t.title}
      </h1>
      <p>{t.says}</p>
      <Switch>
        <Match when={door() === null}>
          <p role="alert">{t.far}</p>
          <button type="button" onClick={() => void refetch()}>
            {t.again}
          </button>
        </Match>
        <Match when={door()?.asker === "this-machine"}>
          <p>{t.here}</p>
          <a class="press main" href="/">
            {t.toBench}
          </a>
        </Match>
        <Match when={door()} keyed>
          {(here) => (
            <Show
              when={here.secure || plainWill() || here.secureAddress === null}
              fallback={<Insecure door={here} onGoOn={() => setPlainWill(true)} />}
            >
              <ComeIn />
            </Show>
          )}
        </Match>
      </Switch>
    </main>
  );
}

function Insecure(props: { readonly door: Door; readonly onGoOn: () => void }) {
  const onward = () => `${props.door.secureAddress}/let-in#${codeHere()}`;
  return (
    <>
      <TrustSteps fingerprint={props.door.fingerprint} onward={onward()} />
      <section class="hung">
        <h2>{t.withoutHeading}</h2>
        <p>{t.withoutSays}</p>
        <button type="button" class="wide" onClick={() => props.onGoOn()}>
          {t.withoutAct}
        </button>
      </section>
    </>
  );
}

function ComeIn() {
  const [name, setName] = createSignal<string>(t.nameDefault);
  const [told, setTold] = createSignal(false);
  const [no, setNo] = createSignal<string>();
  const [isIn, setIsIn] = createSignal(false);
  const missing = () => (told() && name().trim() === "" ? t.nameMissing : undefined);
  async function act(): Promise<void> {
    setTold(true);
    setNo(undefined);
    if (name().trim() === "") return;
    try {
      const device = await (await openKeep()).device();
      await pairingApi.letIn({ code: codeHere(), name: name().trim(), device });
      history.replaceState(null, "", location.pathname); // it is spent
      setIsIn(true);
    } catch (error) {
      if (error instanceof SaidNo) setNo(error.message);
      else if (error instanceof Error && error.name === "OutOfReach") setNo(t.far);
      else throw error;
    }
  }
  return (
    <Show
      when={isIn()}
      fallback={
        <Show when={codeHere() !== ""} fallback={<p>{t.noCode}</p>}>
          <section class="hung stack">
            <TextField
              label={t.name}
              hint={t.nameHint}
              value={name()}
              onInput={setName}
              onEnter={() => void act()}
              wrong={missing()}
            />
            <Show when={no()} keyed>
              {(why) => <DoesNotFit heading={t.refused} says={why} />}
            </Show>
            <button type="button" class="main" onClick={() => void act()}>
              {t.act}
            </button>
          </section>
        </Show>
      }
    >
      <section class="hung stack" role="status">
        <h2>{t.isIn}</h2>
        <p>{t.isInSays}</p>
        <a class="press main" href="/" target="_self">
          {t.toBench}
        </a>
      </section>
    </Show>
  );
}
