import type { JSX } from "solid-js";
import "./controls.css";

/** The thing itself in dashes, one sentence, one thing to press (the children). */
export function Empty(props: {
  readonly heading: JSX.Element;
  readonly says: JSX.Element;
  readonly drawing?: JSX.Element;
  readonly children?: JSX.Element;
}) {
  return (
    <div class="empty">
      <div>
        <h2>{props.heading}</h2>
        <p>{props.says}</p>
        {props.children}
      </div>
      {props.drawing}
    </div>
  );
}

export const JarInDashes = () => (
  <svg width="76" height="108" viewBox="0 0 88 122" aria-hidden="true">
    <path
      class="dashes"
      d="M19 12V22Q6 26 6 38V110Q6 118 14 118H74Q82 118 82 110V38Q82 26 69 22V12M14 2H74V12H14Z"
    />
  </svg>
);

export const BoardInDashes = () => (
  <svg width="84" height="64" viewBox="0 0 84 64" aria-hidden="true">
    <path class="dashes" d="M2 2H82V62H2ZM16 2V62" />
  </svg>
);
