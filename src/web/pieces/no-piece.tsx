import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";

/** The address names a piece that the book does not hold. */
export const NoPiece = () => (
  <Page title={words.pieces.noPiece}>
    <h1>{words.pieces.noPiece}</h1>
    <p>{words.pieces.noPieceSays}</p>
    <p>
      <a href="/pieces">{words.pieces.title}</a>
    </p>
  </Page>
);
