import type { Topic } from "./topic.ts";

interface TopicEntry {
  /** Declared complete: a case that is not read fails the project's own test run. */
  readonly complete: boolean;
  /** The files that know how to compute it, each exporting `topic`. */
  readonly parts: readonly (() => Promise<{ readonly topic: Topic }>)[];
}

/** What can be checked. A topic that is not here is read all the same, and all its cases count as not read. */
export const topics: Readonly<Record<string, TopicEntry>> = {};

/** The parts of a topic as one. */
export async function loadTopic(name: string): Promise<Topic> {
  const parts = await Promise.all((topics[name]?.parts ?? []).map(async (load) => (await load()).topic));
  const wholeFile = parts.find((p) => p.wholeFile !== undefined)?.wholeFile;
  return {
    kinds: Object.assign({}, ...parts.map((p) => p.kinds)),
    instances: Object.assign({}, ...parts.map((p) => p.instances)),
    tables: Object.assign({}, ...parts.map((p) => p.tables)),
    notCompared: parts.flatMap((p) => p.notCompared ?? []),
    ...(wholeFile === undefined ? {} : { wholeFile }),
    close: async () => {
      for (const part of parts) await part.close?.();
    },
  };
}
