/** What one tab tells the others of this browser about a notebook that both have open. */
export type TabNews =
  | { readonly say: "written"; readonly notebook: string; readonly texts: readonly string[] }
  | {
      readonly say: "settled";
      readonly notebook: string;
      readonly sent: readonly string[];
      readonly refused: readonly { readonly id: string; readonly message: string }[];
    };

export interface Tabs {
  readonly tell: (news: TabNews) => void;
  readonly listen: (hear: (news: TabNews) => void) => void;
}

export const noTabs: Tabs = { tell: () => undefined, listen: () => undefined };

export function tabsOfBrowser(): Tabs {
  if (typeof BroadcastChannel === "undefined") return noTabs;
  const channel = new BroadcastChannel("lacbench");
  // Heard from now on: what another tab writes while this one still reads what is kept must not pass it by.
  const early: TabNews[] = [];
  channel.onmessage = (event: MessageEvent<TabNews>) => early.push(event.data);
  return {
    tell: (news) => channel.postMessage(news),
    listen: (hear) => {
      channel.onmessage = (event: MessageEvent<TabNews>) => hear(event.data);
      for (const news of early.splice(0)) hear(news);
    },
  };
}
