import { createUniqueId, For, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { glassPath, insidePath, jarBox, levelAt } from "./jar-shape.ts";
import "./jar.css";

export interface DrawnJar {
  /** Share of the full jar, by volume. */
  readonly share: number;
  /** The finish's colour; undefined where the resin's is not known. */
  readonly fill: string | undefined;
  /** Undissolved flakes, seen through more of it. */
  readonly flake?: string | undefined;
  readonly undissolved?: Body<"batch-looked-at">["undissolved"] | undefined;
  readonly clarity?: Body<"batch-looked-at">["clarity"] | null | undefined;
  readonly wax?: boolean | undefined;
  /** A second level, dashed: what is poured, where the solid one is what it becomes. */
  readonly poured?: number | undefined;
  readonly empty?: boolean | undefined;
}

const flakes = [
  "M8 118L14 108 24 112 22 119Z",
  "M44 119L50 110 60 106 64 119Z",
  "M26 118L30 106 40 109 42 119Z",
  "M66 119L70 109 80 112 78 119Z",
  "M36 102L44 96 48 104Z",
  "M56 98L62 94 66 101Z",
  "M14 101L20 95 25 102Z",
];
const flakeCount = { most: 7, some: 4, "a trace": 1, none: 0 } as const;

/**
 * A jar drawn from its data, as a group to be placed in a drawing: level true to its volume, the finish as its fill,
 * clarity as print on a card behind it (clear lets it be read, hazy blurs it, cloudy hides it).
 */
export function JarGroup(props: { readonly jar: DrawnJar }) {
  const id = createUniqueId();
  const level = () => levelAt(props.jar.share);
  const liquid = () => `M0 ${level()}H88V120H0Z`;
  const shows = (clarity: string) => props.jar.clarity === clarity;
  const veil = () => (shows("hazy") ? 0.3 : shows("cloudy") ? 0.42 : 0);
  return (
    <g class="jar">
      <defs>
        <clipPath id={`${id}-in`}>
          <path d={insidePath} />
        </clipPath>
        <pattern id={`${id}-card`} width="14" height="14" patternUnits="userSpaceOnUse">
          <path d="M2 4H10M2 10H7" class="print" classList={{ blurred: shows("hazy") }} />
        </pattern>
      </defs>
      <Show when={!props.jar.empty}>
        <g clip-path={`url(#${id}-in)`} class="within">
          <path d={liquid()} fill={props.jar.fill ?? "var(--sheet)"} />
          <Show when={veil() > 0}>
            <path d={liquid()} fill="#F9FAF7" opacity={veil()} />
          </Show>
          <Show when={shows("clear") || shows("hazy")}>
            <path d={liquid()} fill={`url(#${id}-card)`} />
          </Show>
          <Show when={props.jar.wax}>
            <path d="M0 108Q22 100 44 107T88 104V120H0Z" fill="#EFE3C4" />
            <path class="fine" d="M0 108Q22 100 44 107T88 104" />
          </Show>
          <For each={flakes.slice(0, flakeCount[props.jar.undissolved ?? "none"])}>
            {(path) => <path d={path} fill={props.jar.flake ?? "var(--line)"} class="flake" />}
          </For>
        </g>
        <path class="fine" d={`M6 ${level()}H82`} />
      </Show>
      <Show when={props.jar.poured} keyed>
        {(poured) => <path class="fine" stroke-dasharray="5 4" d={`M6 ${levelAt(poured)}H82`} />}
      </Show>
      <path class="pen glass" d={glassPath} stroke-dasharray={props.jar.empty ? "5 5" : undefined} />
    </g>
  );
}

/** One jar by itself, with its code and what is in it written on the glass where there is room. */
export function JarPicture(props: {
  readonly jar: DrawnJar;
  readonly label: string;
  readonly code?: string;
  readonly says?: string;
  readonly width?: number;
  /** Levels named outside the glass, at the right. */
  readonly marks?: readonly { readonly share: number; readonly says: string; readonly strong?: boolean }[];
}) {
  const width = () => props.width ?? 112;
  return (
    <svg
      width={width()}
      height={(width() * (jarBox.height + 2)) / 92}
      viewBox="-2 0 92 124"
      role="img"
      aria-label={props.label}
    >
      <JarGroup jar={props.jar} />
      <For each={props.marks}>
        {(mark) => (
          <g>
            <path class="fine" d={`M82 ${levelAt(mark.share)}H88`} />
            <text
              x="91"
              y={levelAt(mark.share) + (mark.strong ? -1 : 8)}
              class={mark.strong ? "b" : ""}
              font-size="13.5"
            >
              {mark.says}
            </text>
          </g>
        )}
      </For>
      <Show when={props.code}>
        <rect class="paper" x="15" y="45" width="58" height={props.says ? 38 : 24} rx="1.5" />
        <text x="44" y="62" class="m b" font-size={(props.code?.length ?? 0) > 4 ? "12" : "17"}>
          {props.code}
        </text>
        <text x="44" y="78" class="m" font-size="12.5">
          {props.says}
        </text>
      </Show>
    </svg>
  );
}
