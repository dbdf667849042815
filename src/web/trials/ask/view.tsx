import { createMemo, createSignal, Show } from "solid-js";
import type { Problem } from "../../../core/registry/problem.ts";
import { trialIds, trialView } from "../../../core/views/trial.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { DoesNotFit } from "../../controls/does-not-fit.tsx";
import { navigate } from "../../router.ts";
import { Page } from "../../shell/page.tsx";
import * as words from "../../words/words.ts";
import { Boards, type DrawnBoard } from "../boards.tsx";
import { shelfJars } from "../shelf-jars.ts";
import "../trials.css";
import { Aside } from "./aside.tsx";
import { screenOf } from "./draft-changes.ts";
import { useDraft } from "./draft-store.ts";
import { BlankEditor } from "./editors.tsx";
import { firstKeeping, type Keeping, passphraseFault } from "./keeping.ts";
import { keepTrial, newSecret } from "./lay-down.ts";
import { jarsOf, type Layout } from "./plan.ts";
import { type Planned, usePlan } from "./plan-state.ts";
import { type Blank, Sentence } from "./sentence.tsx";
import { Settings } from "./settings.tsx";
import { Stages } from "./stages.tsx";

function drawnBoards(planned: Planned, layout: Layout): readonly DrawnBoard[] {
  return planned.asked.boards.map((b) => {
    const here = layout.patches.filter((p) => p.board === b.board);
    const turns = [...here].sort((x, y) => (x.order[0] as number) - (y.order[0] as number));
    return {
      name: words.trials.sentence.capital(b.board),
      plank: b.plank,
      wood: b.wood,
      patches: here.map((p) => ({
        patch: p.patch,
        code: p.code,
        place: p.place,
        turn: turns.indexOf(p) + 1,
      })),
    };
  });
}

/** Ask a question as one sentence; the boards, what they can show and what they take follow from it. */
export function AskView() {
  const book = useBook();
  const { draft, set, forget } = useDraft(book.id);
  const trials = book.view("trials-asked", (read) =>
    trialIds(read).flatMap((trial) => trialView(read, trial) ?? []),
  );
  const plan = usePlan(draft, newSecret, trials);
  const [open, setOpen] = createSignal<Blank | null>(null);
  const [keeping, setKeeping] = createSignal<Keeping>(firstKeeping);
  const [told, setTold] = createSignal<string>();
  const [busy, setBusy] = createSignal(false);
  const [notKept, setNotKept] = createSignal(false);
  const shelf = createMemo(() => book.look("shelf-jars", shelfJars));
  const calledByItself = () =>
    words.trials.calledBy(
      plan
        .reading()
        .asked?.factors.filter((f) => f.name !== "wood")
        .map((f) => f.name) ?? [],
      plan.reading().asked?.woods ?? [],
    );

  async function keepIt(): Promise<void> {
    const now = plan.planned();
    if (busy() || now === null || now.layout === null || !plan.current()) return;
    const fault = passphraseFault(keeping());
    setTold(fault === null ? undefined : words.trials.passphraseFaults[fault]);
    if (fault !== null) return;
    setBusy(true);
    setNotKept(false);
    try {
      const called = (keeping().called ?? calledByItself()).trim() || calledByItself();
      const trial = await keepTrial(book, called, now.asked, now.layout, now.seed, keeping());
      forget();
      navigate(`/trials/${trial}`);
    } catch (error) {
      if (!(error instanceof DOMException)) throw error; // the browser would not keep the key
      setNotKept(true);
    } finally {
      setBusy(false);
    }
  }

  return (
    <Page title={words.trials.ask}>
      <Sentence draft={draft()} open={open()} onOpen={(blank) => setOpen(open() === blank ? null : blank)} />
      <BlankEditor
        blank={open()}
        draft={draft()}
        set={set}
        faults={plan.reading().faults}
        onDone={() => setOpen(null)}
      />
      <Faults plan={plan} onOpen={setOpen} open={open()} />
      <Show when={plan.planned()?.problem && plan.planned()?.asked} keyed>
        {(asked) => <Stages asked={asked} onTake={() => set(screenOf(draft()))} />}
      </Show>
      <Show
        when={plan.planned()}
        fallback={<p role="status">{plan.working() ? words.trials.working : ""}</p>}
      >
        {(planned) => (
          <Show when={planned().layout}>
            {(layout) => (
              <div class="plan" aria-busy={plan.working()}>
                <div class="drawn">
                  <Boards
                    boards={drawnBoards(planned(), layout())}
                    geometry={planned().asked.geometry}
                    label={words.trials.drawing(planned().asked.boards.length, layout().patches.length)}
                  />
                  <p class="small soft">{sayScale(planned())}</p>
                  <button type="button" class="words" onClick={() => plan.drawAgain()}>
                    {words.trials.drawAgain}
                  </button>
                </div>
                <Settings
                  keeping={keeping()}
                  set={(change) => setKeeping({ ...keeping(), ...change })}
                  jars={jarsOf(planned().asked, layout())}
                  shelf={shelf()}
                  calledByItself={calledByItself()}
                  wrong={told()}
                />
                <div class="beside">
                  <Aside
                    draft={draft()}
                    set={set}
                    planned={planned()}
                    layout={layout()}
                    further={plan.further() ?? null}
                    noise={plan.noise}
                    earlierOf={plan.earlierOf}
                  />
                  <div class="keep">
                    <Show when={notKept()}>
                      <DoesNotFit heading={words.trials.keyNotKept} />
                    </Show>
                    <div class="side-by-side">
                      <button
                        type="button"
                        onClick={() => set({ jarsPerLevel: planned().asked.jarsPerLevel === 1 ? "2" : "1" })}
                      >
                        {planned().asked.jarsPerLevel === 1 ? words.trials.secondJars : words.trials.oneJar}
                      </button>
                      <button type="button" class="main" onClick={() => void keepIt()}>
                        {busy() ? words.trials.sealing : words.trials.keepIt}
                      </button>
                    </div>
                  </div>
                </div>
              </div>
            )}
          </Show>
        )}
      </Show>
    </Page>
  );
}

const sayScale = ({ asked: { geometry: g } }: Planned): string =>
  words.trials.toScale(
    [Math.round(g.patchLengthMm), Math.round(g.patchWidthMm)],
    [g.lengthMm, g.widthMm],
    g.gutterMm,
  );

/** What stands in the way of a layout: fields in another editor than the open one, and what the calculation refuses. */
function Faults(props: {
  readonly plan: ReturnType<typeof usePlan>;
  readonly open: Blank | null;
  readonly onOpen: (blank: Blank) => void;
}) {
  const blanksAtFault = () => [...new Set(props.plan.reading().faults.map((f) => blankOf(f.field)))];
  const problem = () => props.plan.planned()?.problem ?? null;
  const elsewhere = () => blanksAtFault().filter((blank) => blank !== props.open);
  return (
    <>
      <Show when={elsewhere().length > 0}>
        <DoesNotFit
          heading={words.trials.notYet}
          says={words.trials.lookInto}
          meanings={elsewhere().map((blank) => ({
            label: words.trials.blankNames[blank],
            onPress: () => props.onOpen(blank),
          }))}
        />
      </Show>
      <Show when={blanksAtFault().length === 0 && problem()}>
        {(p) => <DoesNotFit heading={words.trials.cannotLay} says={refusal(p())} />}
      </Show>
    </>
  );
}

/** A grid that is too large, which is the likeliest, in the page's own words; anything else as the calculation says it. */
const refusal = ({ code, field, value, limits, message }: Problem): string =>
  code === "not-enough-data" && field === "boards" && limits?.min !== undefined
    ? words.plan.tooLarge(limits.min, Number(value))
    : message;

function blankOf(field: string): Blank {
  if (field.startsWith("factors") || field === "jarsPerLevel") return "factors";
  if (field.startsWith("looks")) return "looks";
  return ["coats", "evenings", "daysToJudge", "millilitres"].includes(field) ? "coats" : "boards";
}
