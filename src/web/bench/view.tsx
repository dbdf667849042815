import { Page } from "../shell/page.tsx";
import { words } from "../words/words.ts";

export function BenchView() {
  return (
    <Page title={words.bench.title}>
      <h1>{words.bench.title}</h1>
    </Page>
  );
}
