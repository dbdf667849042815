import { type Component, createResource, Show } from "solid-js";

export type LazyPage<P extends object> = Component<P> & { readonly preload: () => Promise<unknown> };

/**
 * A page that is fetched when it is first opened. A fetch that failed is tried again at the next opening: out of reach now
 * is not out of reach for ever.
 */
export function lazy<P extends object>(
  fetch: () => Promise<{ readonly default: Component<P> }>,
): LazyPage<P> {
  let page: Component<P> | undefined;
  const preload = async () => {
    page ??= (await fetch()).default;
    return page;
  };
  const view = (props: P) => {
    const [fetched] = createResource(preload, { initialValue: page });
    return (
      <Show when={page ?? fetched()} keyed>
        {(Page) => <Page {...props} />}
      </Show>
    );
  };
  return Object.assign(view, { preload });
}

/** Whether a page could not be fetched, which says nothing against the page. */
export const isUnfetched = (error: unknown): boolean =>
  error instanceof Error && /dynamically imported module|preload CSS|module script/i.test(error.message);
