import { isUnfetched, type LazyPage, lazy } from "./lazy.tsx";
import type { PlaceId, ScreenProps } from "./place.ts";

/** One page: the place it belongs to, its path, and what draws it, fetched when it is first opened. */
export interface Screen {
  readonly place: PlaceId;
  readonly path: string;
  readonly view: LazyPage<ScreenProps>;
}

/** Every page. A view tells its own title (`<Page title>`). The first is fetched first: the head leads there when the house is out of reach. */
export const screens: readonly Screen[] = [
  {
    place: "book",
    path: "/book/keeping",
    view: lazy(async () => ({ default: (await import("./offline/view.tsx")).KeepingView })),
  },
  {
    place: "bench",
    path: "/bench",
    view: lazy(async () => ({ default: (await import("./bench/view.tsx")).BenchView })),
  },
  {
    place: "bench",
    path: "/bench/coat/:layer",
    view: lazy(async () => ({ default: (await import("./drying/coat/view.tsx")).CoatScreen })),
  },
  {
    place: "bench",
    path: "/bench/wood",
    view: lazy(async () => ({ default: (await import("./wood/view.tsx")).WoodView })),
  },
  {
    place: "bench",
    path: "/bench/boards/:trial/:board",
    view: lazy(async () => ({ default: (await import("./bench/board.tsx")).BoardInHandView })),
  },
  {
    place: "bench",
    path: "/bench/remembered",
    view: lazy(async () => ({ default: (await import("./remembered/view.tsx")).RememberedView })),
  },
  {
    place: "shelf",
    path: "/shelf",
    view: lazy(async () => ({ default: (await import("./shelf/view.tsx")).ShelfView })),
  },
  {
    place: "shelf",
    path: "/shelf/new",
    view: lazy(async () => ({ default: (await import("./shelf/new.tsx")).NewOnShelf })),
  },
  {
    place: "shelf",
    path: "/shelf/:thing",
    view: lazy(async () => ({ default: (await import("./shelf/correct.tsx")).CorrectOnShelf })),
  },
  {
    place: "jars",
    path: "/jars",
    view: lazy(async () => ({ default: (await import("./jars/view.tsx")).JarsView })),
  },
  {
    place: "jars",
    path: "/jars/new",
    view: lazy(async () => ({ default: (await import("./jars/mix/view.tsx")).NewJarView })),
  },
  {
    place: "jars",
    path: "/jars/labels",
    view: lazy(async () => ({ default: (await import("./jars/labels/view.tsx")).LabelsView })),
  },
  {
    place: "jars",
    path: "/jars/import",
    view: lazy(async () => ({ default: (await import("./jars/import/view.tsx")).ImportJars })),
  },
  {
    place: "jars",
    path: "/jars/air",
    view: lazy(async () => ({ default: (await import("./drying/compare/view.tsx")).CompareJars })),
  },
  {
    place: "jars",
    path: "/jars/:jar",
    view: lazy(async () => ({ default: (await import("./jars/view.tsx")).JarsView })),
  },
  {
    place: "pieces",
    path: "/pieces",
    view: lazy(async () => ({ default: (await import("./pieces/view.tsx")).PiecesView })),
  },
  {
    place: "pieces",
    path: "/pieces/new",
    view: lazy(async () => ({ default: (await import("./pieces/plan-piece.tsx")).PlanPieceView })),
  },
  {
    place: "pieces",
    path: "/pieces/:piece/plan",
    view: lazy(async () => ({ default: (await import("./pieces/plan-piece.tsx")).PlanPieceView })),
  },
  {
    place: "pieces",
    path: "/pieces/:piece",
    view: lazy(async () => ({ default: (await import("./pieces/piece.tsx")).PieceScreen })),
  },
  {
    place: "pieces",
    path: "/pieces/:piece/paper",
    view: lazy(async () => ({ default: (await import("./pieces/paper.tsx")).PiecePaper })),
  },
  {
    place: "book",
    path: "/book",
    view: lazy(async () => ({ default: (await import("./book/view.tsx")).BookView })),
  },
  {
    place: "book",
    path: "/book/phones",
    view: lazy(async () => ({ default: (await import("./pairing/phones.tsx")).PhonesView })),
  },
  {
    place: "trials",
    path: "/trials",
    view: lazy(async () => ({ default: (await import("./trials/list-view.tsx")).TrialsView })),
  },
  {
    place: "trials",
    path: "/trials/new",
    view: lazy(async () => ({ default: (await import("./trials/ask/view.tsx")).AskView })),
  },
  {
    place: "trials",
    path: "/trials/import",
    view: lazy(async () => ({ default: (await import("./trials/import/view.tsx")).ImportTrial })),
  },
  {
    place: "trials",
    path: "/trials/:trial",
    view: lazy(async () => ({ default: (await import("./trials/trial-view.tsx")).TrialScreen })),
  },
  {
    place: "trials",
    path: "/trials/:trial/boards/:board",
    view: lazy(async () => ({ default: (await import("./film/board.tsx")).BoardScreen })),
  },
  {
    place: "trials",
    path: "/trials/:trial/evenings",
    view: lazy(async () => ({ default: (await import("./trials/evenings/view.tsx")).TrialEveningsScreen })),
  },
  {
    place: "trials",
    path: "/trials/:trial/judge",
    view: lazy(async () => ({ default: (await import("./trials/judge-view.tsx")).JudgeView })),
  },
  {
    place: "trials",
    path: "/trials/:trial/print",
    view: lazy(async () => ({ default: (await import("./trials/print-view.tsx")).TrialPrint })),
  },
  {
    place: "trials",
    path: "/trials/:trial/verdict",
    view: lazy(async () => ({ default: (await import("./verdict/view.tsx")).VerdictView })),
  },
];

/** Fetches every page while there is nothing else to do, so that all are there when the house is out of reach. */
export async function fetchScreens(): Promise<void> {
  try {
    for (const { view } of screens) await view.preload();
  } catch (error) {
    if (!isUnfetched(error)) throw error; // out of reach now: a page is fetched when it is opened
  }
}
