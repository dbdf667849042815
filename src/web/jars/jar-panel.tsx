import { Show } from "solid-js";
import type { JarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Cautions } from "../controls/cautions.tsx";
import { JarPicture } from "../drawings/jar.tsx";
import { Photographs } from "../photographs/view.tsx";
import * as words from "../words/words.ts";
import { DropTests } from "./drop-tests.tsx";
import { JarActs } from "./jar-acts.tsx";
import { JarCut } from "./jar-cut.tsx";
import { JarFacts } from "./jar-facts.tsx";
import { JarFitness } from "./jar-fitness.tsx";
import { JarHistory, NotReckoned, StruckOffShelf } from "./jar-history.tsx";
import { drawnJar } from "./jar-look.ts";
import { inWords, millilitres, readOut } from "./jar-text.ts";
import { Lineage } from "./lineage.tsx";
import { Thresholds } from "./thresholds.tsx";
import { lookAtFitness } from "./use-jar.ts";

/** One jar: what it is, how strong, where it comes from, and what to do with it. */
export function JarPanel(props: { readonly jar: JarView }) {
  const book = useBook();
  const fitness = () => lookAtFitness(book, props.jar.id);
  return (
    <article class="jar-panel">
      <div class="jar-head">
        <div>
          <h1>{words.jars.heading(props.jar.code, inWords(props.jar))}</h1>
          <JarFitness fitness={fitness()} />
        </div>
        <JarPicture
          jar={drawnJar(props.jar)}
          label={readOut(props.jar, fitness())}
          code={props.jar.code}
          says={props.jar.known && props.jar.emptied === null ? millilitres(props.jar.volume.value) : ""}
        />
      </div>
      <Thresholds />
      <NotReckoned jar={props.jar} />
      <StruckOffShelf jar={props.jar} />
      <Show when={props.jar.emptied === null}>
        <JarCut jar={props.jar} />
      </Show>
      <section class="hung">
        <JarFacts jar={props.jar} />
      </section>
      <Lineage jar={props.jar} />
      <DropTests jar={props.jar} />
      <Show when={props.jar.emptied === null}>
        <Cautions act="opening" liquid={props.jar.cautioned} />
      </Show>
      <Show when={props.jar.emptied === null && props.jar.cut !== null}>
        <p class="not-on-paper">
          <a class="press" href={`/jars/air?jars=${props.jar.id}`}>
            {words.drying.blush.compareThis}
          </a>
        </p>
      </Show>
      <JarActs jar={props.jar} />
      <Photographs thing={props.jar.id} />
      <JarHistory jar={props.jar} />
    </article>
  );
}
