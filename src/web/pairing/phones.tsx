import { createResource, createSignal, For, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { qrPath } from "../drawings/qr-path.ts";
import { now } from "../shell/now.ts";
import { Page } from "../shell/page.tsx";
import { clock, whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { type Invitation, type PhoneTold, pairingApi, SaidNo } from "./pairing-api.ts";
import "./pairing.css";

const t = words.pairing.phones;

type Told = Awaited<ReturnType<typeof pairingApi.list>> | "elsewhere" | "far";

async function askList(): Promise<Told> {
  try {
    return await pairingApi.list();
  } catch (error) {
    return error instanceof SaidNo ? "elsewhere" : "far";
  }
}

/** At the computer that keeps the notebook: which phones are let in, and letting in another. */
export function PhonesView() {
  const [told, { refetch }] = createResource(askList);
  const list = () => {
    const is = told();
    return is === undefined || is === "elsewhere" || is === "far" ? undefined : is;
  };
  return (
    <Page title={t.title}>
      <div class="pairing stack">
        <h1>{t.title}</h1>
        <p>{t.says}</p>
        <Show when={told() === "elsewhere"}>
          <p>{t.elsewhere}</p>
        </Show>
        <Show when={told() === "far"}>
          <p>{t.far}</p>
        </Show>
        <Show when={list()}>
          {(is) => (
            <Show when={is().paired} fallback={<NotPaired />}>
              <Invite onShown={() => void refetch()} />
              <List phones={is().phones} onChange={() => void refetch()} />
            </Show>
          )}
        </Show>
      </div>
    </Page>
  );
}

function NotPaired() {
  return (
    <section class="hung">
      <h2>{t.notPaired}</h2>
      <p>{t.notPairedSays}</p>
      <p>
        <code>{t.command}</code>
      </p>
      <p class="soft small">{t.fromClone}</p>
    </section>
  );
}

function Invite(props: { readonly onShown: () => void }) {
  const book = useBook();
  const [invitation, setInvitation] = createSignal<Invitation>();
  async function show(): Promise<void> {
    setInvitation(await pairingApi.invite());
    props.onShown();
  }
  return (
    <section class="hung">
      <Show
        when={invitation()}
        fallback={
          <button type="button" class="main" onClick={() => void show()}>
            {t.letOneIn}
          </button>
        }
      >
        {(is) => (
          <>
            <h2>{t.scan}</h2>
            <p>{t.scanSays(clock(is().until, book.zone))}</p>
            <Code address={is().addresses[0] ?? ""} />
            <p>{t.orType}</p>
            <p class="address">
              <code>{is().addresses[0]}</code>
            </p>
            <Show when={is().addresses.length > 1}>
              <p class="small soft">{t.otherAddress}</p>
              <ul class="small">
                <For each={is().addresses.slice(1)}>{(one) => <li class="address">{one}</li>}</For>
              </ul>
            </Show>
            <button type="button" onClick={() => void show()}>
              {t.another}
            </button>
          </>
        )}
      </Show>
    </section>
  );
}

/** Black on white in every light: a camera reads nothing else. */
function Code(props: { readonly address: string }) {
  const drawing = () => qrPath(props.address);
  return (
    <svg class="code" viewBox={`0 0 ${drawing().size} ${drawing().size}`} role="img" aria-label={t.scan}>
      <rect width={drawing().size} height={drawing().size} fill="#fff" />
      <path d={drawing().path} fill="#000" />
    </svg>
  );
}

function List(props: { readonly phones: readonly PhoneTold[]; readonly onChange: () => void }) {
  const book = useBook();
  const [off, setOff] = createSignal<string>();
  const when = (at: string) => whenInWords(at, book.zone, now());
  async function revoke(phone: PhoneTold): Promise<void> {
    await pairingApi.revoke(phone.id);
    setOff(phone.name);
    props.onChange();
  }
  return (
    <section class="hung">
      <Show when={props.phones.length > 0} fallback={<p>{t.none}</p>}>
        <ul class="plain">
          <For each={props.phones}>
            {(phone) => (
              <li class="phone">
                <span>
                  <b>{phone.name}</b>{" "}
                  <span class="soft small">
                    {phone.revokedAt === undefined
                      ? t.since(when(phone.letInAt))
                      : t.off(when(phone.revokedAt))}
                    {phone.secure || phone.revokedAt !== undefined ? "" : `, ${t.plain}`}
                  </span>
                </span>
                <Show when={phone.revokedAt === undefined}>
                  <button
                    type="button"
                    aria-label={t.revokeThis(phone.name)}
                    onClick={() => void revoke(phone)}
                  >
                    {t.revoke}
                  </button>
                </Show>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <Show when={off()} keyed>
        {(name) => <p role="status">{t.revoked(name)}</p>}
      </Show>
    </section>
  );
}
