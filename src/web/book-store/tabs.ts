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
  return {
    tell: (news) => channel.postMessage(news),
    listen: (hear) => {
      channel.onmessage = (event: MessageEvent<TabNews>) => hear(event.data);
    },
  };
}
